import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { mayPass } from "../../src/shared/projection.ts";
import type { Column, TableName } from "../../src/tables/declarations.ts";
import { fileNames, insideName } from "../../src/tables/insideName.ts";
import { tableDeclarations } from "../../src/tables/tableDeclarations.ts";

/** A planted text or number, and the column it stands in: `lab.laboratory`. */
export interface Marker {
  readonly place: string;
  readonly text: string;
}

/** A house whose logs hold a text or number of its own in every column of every table, in a new folder. */
export interface MarkedHouse {
  readonly folder: string;
  /** Must be found nowhere: every text of a column that may not pass, and every text of a customer who does not share. */
  readonly secret: readonly Marker[];
  /** Numbers of columns that may not pass, as no other column has them. */
  readonly secretNumbers: readonly Marker[];
  /** Numbers of columns that may. */
  readonly shownNumbers: readonly Marker[];
  /** What the first customer's pages must show. */
  readonly shownToFirst: readonly Marker[];
  /** Of the second customer who shares: must not be found in the first one's folder. */
  readonly shownToSecond: readonly Marker[];
}

/** Three customers, a batch each; the third does not share. */
const OWNERS = ["first", "second", "third"] as const;
type Owner = (typeof OWNERS)[number];

const TIMES: Readonly<Record<string, string>> = {
  "steeping.started_at": "2026-03-01 08:00",
  "steeping.ended_at": "2026-03-02 20:00",
  "germination.started_at": "2026-03-02 21:00",
  "germination.ended_at": "2026-03-06 21:00",
  "acrospire-counts.counted_at": "2026-03-04 21:00",
  "kilning.loaded_at": "2026-03-06 22:00",
  "kilning.cure_started_at": "2026-03-07 08:00",
  "kilning.heat_off_at": "2026-03-07 12:00",
  "kilning.unloaded_at": "2026-03-07 13:00",
  "readings.at": "2026-03-07 03:00",
  "weather.at": "2026-03-07 03:00",
  "logger-checks.at": "2026-03-05 03:00",
};

/** Masses that fit each other, so that no row is set aside; the rest lie where their range lets them. */
const NUMBERS: Readonly<Record<string, number>> = {
  "grain-lots.mass_kg": 61_713.3,
  "steeping.grain_in_kg": 5171.3,
  "steeping.grain_moisture_pct": 12.77,
  "steeping.steep_out_kg": 8623.9,
  "germination.bed_grain_kg": 5171.4,
  "kilning.green_load_kg": 8391.7,
  "kilning.malt_out_kg": 4319.6,
  "kilning.cleaned_out_kg": 4190.9,
  "kilning.rootlets_kg": 117.8,
  "kilning.final_moisture_pct": 4.4,
  "moisture-samples.moisture_pct": 4.4,
  "deliveries.mass_kg": 1250,
  "deliveries.package_count": 50,
  "orders.mass_kg": 93_717,
  "targets.low": 3,
  "targets.target": 4.4,
  "targets.high": 5,
};

const IDS: Readonly<Record<string, (owner: Owner) => string>> = {
  run: (owner) => `run-of-${owner}-zqx`,
  lot: (owner) => `lot-of-${owner}-zqx`,
  customer: (owner) => `customer-${owner}-zqx`,
  kiln: (owner) => `kiln-of-${owner}-zqx`,
  variety: (owner) => `variety-of-${owner}-zqx`,
};

let counter = 0;

function numberFor(place: string, column: Column): number {
  const given = NUMBERS[place];
  if (given !== undefined) return given;
  counter += 1;
  const [low, high] = column.range ?? [0, 1000];
  const share = 0.31 + 0.0073 * counter - Math.floor(0.0073 * counter * 2) / 2;
  const value = low + (high - low) * share * 0.9;
  return column.kind === "count" ? Math.max(1, Math.round(value)) : Number(value.toFixed(2));
}

/** Text of one cell, and whether it is a marker. */
function cell(table: TableName, column: Column, owner: Owner): { readonly text: string; readonly marker: boolean } {
  const inside = insideName(column);
  const place = `${table}.${inside}`;
  if (table === "customers" && column.stem === "share")
    return { text: owner === "third" ? "no" : "yes", marker: false };
  if (place === "customers.link_key") return { text: "", marker: false };
  if (place === "targets.measure") return { text: "final_moisture_pct", marker: false };
  if (place === "deliveries.product" || place === "deliveries.package_kind") {
    return { text: column.stem === "product" ? "malt" : "tote", marker: false };
  }
  const id = IDS[column.stem];
  if (id !== undefined) return { text: id(owner), marker: true };
  switch (column.kind) {
    case "id":
    case "text":
      return { text: `${table}-${column.stem}-${owner}-zqx`, marker: true };
    case "choice":
      return { text: column.choices?.[0] ?? "", marker: false };
    case "flag":
      return { text: "1", marker: false };
    case "date":
      return { text: table === "deliveries" ? "2026-04-09" : "2026-03-20", marker: false };
    case "instant":
      return { text: TIMES[place] ?? "2026-03-10 10:00", marker: false };
    default: {
      const { factor, offset } = column.family?.suffixes[0] ?? { factor: 1, offset: 0 };
      const inside = numberFor(place, column);
      return { text: String(Number(((inside - offset) / factor).toFixed(2))), marker: true };
    }
  }
}

const TOML = `name = "House in question"
time_zone = "UTC"
[[kilns]]
id = "kiln-of-first-zqx"
heater_kw = 77.713
[[kilns]]
id = "kiln-of-second-zqx"
[[kilns]]
id = "kiln-of-third-zqx"
[costs]
currency = "currency-zqx"
kwh = 0.7713
malt_kg = 7.7137
refused_batch = 77137.0
[shared]
contact = "contact-shown"
note = "note-shown"
`;

/** Writes the house. Numbers that may not pass are told apart from those that may by their digits. */
export function markedHouse(): MarkedHouse {
  const folder = mkdtempSync(join(tmpdir(), "marked-zqx-"));
  const secret: Marker[] = [{ place: "house.toml costs.currency", text: "currency-zqx" }];
  const secretNumbers: Marker[] = [];
  const shownNumbers: Marker[] = [];
  const shown: Record<Owner, Marker[]> = { first: [], second: [], third: [] };
  const house = { shared: { contact: null, note: null, showGrowers: false } };
  counter = 0;
  for (const { name, place, columns } of tableDeclarations) {
    const headings = [...columns.map((column) => fileNames(column)[0]?.name ?? column.stem), "extra_zqx"];
    const lines = OWNERS.map((owner) => {
      const cells = columns.map((column) => {
        const { text, marker } = cell(name, column, owner);
        const numeric = column.kind === "number" || column.kind === "count";
        const inside = insideName(column);
        const found = { place: `${name}.${inside}`, text };
        if (marker && numeric) (mayPass(name, inside, house) ? shownNumbers : secretNumbers).push(found);
        // A variety passes as grain-lots.csv has it; where another table says the same it says nothing new.
        if (marker && !numeric && mayPass(name, inside, house)) shown[owner].push(found);
        else if (marker && !numeric && (column.stem !== "variety" || owner === "third")) secret.push(found);
        return text;
      });
      secret.push({ place: `${name}.extra_zqx`, text: `${name}-extra-${owner}-zqx` });
      return [...cells, `${name}-extra-${owner}-zqx`].join(",");
    });
    const path = place.endsWith("/") ? `${place}file-zqx.csv` : place;
    mkdirSync(join(folder, path, ".."), { recursive: true });
    writeFileSync(join(folder, path), `${[headings.join(","), ...lines].join("\n")}\n`);
  }
  writeFileSync(join(folder, "house.toml"), TOML);
  secret.push(...shown.third);
  return { folder, secret, secretNumbers, shownNumbers, shownToFirst: shown.first, shownToSecond: shown.second };
}
