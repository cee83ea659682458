import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";

type Row = Readonly<Record<string, string>>;

const rowsOf = (folder: string, path: string): readonly Row[] =>
  parse(readFileSync(join(folder, path), "utf8"), { columns: true }) as Row[];

/** `2026-03-08 01:30` as `8.3.2026 01:30`. */
function dayFirst(text = ""): string {
  const [, year, month, day, clock] = /^(\d+)-(\d+)-(\d+) (.*)$/.exec(text) ?? [];
  return year === undefined ? "" : `${Number(day)}.${Number(month)}.${year} ${clock}`;
}

const comma = (text = ""): string => text.replace(".", ",");

/** The column of the spreadsheet, and what it holds of a batch. */
const SHEET: readonly (readonly [string, (steep: Row, bed: Row, kiln: Row) => string])[] = [
  ["Batch", (steep) => steep.run ?? ""],
  ["Grain lot", (steep) => steep.lot ?? ""],
  ["Grain (t)", (steep) => comma(String(Number(steep.grain_in_kg) / 1000))],
  ["Steep start", (steep) => dayFirst(steep.started_at)],
  ["Steep end", (steep) => dayFirst(steep.ended_at)],
  ["Germ start", (_, bed) => dayFirst(bed.started_at)],
  ["Germ end", (_, bed) => dayFirst(bed.ended_at)],
  ["Bed temp °C", (_, bed) => comma(bed.bed_mean_c)],
  ["Kiln in", (_, __, kiln) => dayFirst(kiln.loaded_at)],
  ["Heat up", (_, __, kiln) => dayFirst(kiln.cure_started_at)],
  ["Kiln out", (_, __, kiln) => dayFirst(kiln.unloaded_at)],
  ["Bed depth (cm)", (_, __, kiln) => comma(kiln.bed_depth_cm)],
  ["Humidity %", (_, __, kiln) => kiln.ambient_rh_pct ?? ""],
  ["Ambient", (_, __, kiln) => comma(kiln.ambient_c)],
  ["Malt moisture %", (_, __, kiln) => comma(kiln.final_moisture_pct)],
  ["Malt out (kg)", (_, __, kiln) => comma(kiln.malt_out_kg)],
  ["Mood", () => "calm"],
];

/** One row for each batch that filled one tank, one bed and one load. */
function sheetText(demo: string): string {
  const only = (rows: readonly Row[], run: string): Row | null => {
    const own = rows.filter((row) => row.run === run);
    return own.length === 1 ? (own[0] as Row) : null;
  };
  const [steeping, germination, kilning] = ["steeping.csv", "germination.csv", "kilning.csv"].map((path) =>
    rowsOf(demo, path),
  ) as [readonly Row[], readonly Row[], readonly Row[]];
  const lines = steeping.flatMap(({ run = "" }) => {
    const [steep, bed, kiln] = [only(steeping, run), only(germination, run), only(kilning, run)];
    return steep && bed && kiln ? [SHEET.map(([, of]) => of(steep, bed, kiln)).join(";")] : [];
  });
  return [SHEET.map(([heading]) => heading).join(";"), ...lines, ""].join("\r\n");
}

const inZone = new Intl.DateTimeFormat("en-GB", {
  timeZone: "Europe/Tallinn",
  hourCycle: "h23",
  day: "2-digit",
  month: "2-digit",
  year: "2-digit",
  hour: "2-digit",
  minute: "2-digit",
  second: "2-digit",
});

/** `01/03/26, 10:00:00` as the logger has it: `01.03.26;10:00:00`. */
const stamp = (utc: string): string =>
  inZone
    .format(Date.parse(`${utc.replace(" ", "T")}Z`))
    .replaceAll("/", ".")
    .replace(", ", ";");

function loggerText(rows: readonly Row[]): string {
  const lines = rows.map(({ at_utc = "", air_on_c, air_off_c, bed_c, heater_on }, i) =>
    [i + 1, stamp(at_utc), comma(air_on_c), comma(air_off_c), comma(bed_c), heater_on === "1" ? "closed" : "open"].join(
      ";",
    ),
  );
  const head = [
    "Logger 7",
    "Serial;0123;;;;;",
    "",
    "No.;Date;Time;Inlet air;Exhaust temp;Malt temp;Relay",
    ";;;°C;°C;°C;",
  ];
  return [...head, ...lines, ""].join("\r\n");
}

/** Text in Windows-1252 as far as that and Latin-1 agree. */
const latin = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

/** The pages' names of the files that {@link writeForeignHouse} writes beside its settings. */
export const SHEET_FILE = "batches.csv";
export const LOGGER_FILES = ["kiln logger 2026-01.csv", "kiln logger 2026-02.csv"] as const;

/**
 * The demo's batches as a house might keep them that never heard of the log format: one spreadsheet for steep, germination
 * and kiln with decimal commas and the day first, and two months of a logger's export, beside a house.toml.
 */
export function writeForeignHouse(folder: string, demo: string): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(
    join(folder, "house.toml"),
    'name = "Own House"\ntime_zone = "Europe/Tallinn"\nunits = "metric"\n\n[[kilns]]\nid = "K1"\n',
  );
  writeFileSync(join(folder, SHEET_FILE), latin(sheetText(demo)));
  const readings = rowsOf(demo, "readings/K1-2026-q1.csv");
  for (const file of LOGGER_FILES) {
    const month = /\d{4}-\d{2}/.exec(file)?.[0] ?? "";
    writeFileSync(
      join(folder, file),
      latin(loggerText(readings.filter(({ at_utc = "" }) => at_utc.startsWith(month)))),
    );
  }
}
