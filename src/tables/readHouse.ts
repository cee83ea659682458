import { parse, TomlError } from "smol-toml";
import { houseMeasures } from "./declareHouse.ts";
import { isEncoding } from "./decode.ts";
import type { DateOrder, FileDeclaration, House, Kiln } from "./house.ts";
import { isTimeZone } from "./localTime.ts";
import type { Problem } from "./problem.ts";
import { readBaselines } from "./readBaselines.ts";
import { declarationOf } from "./tableDeclarations.ts";
import { TomlReader } from "./tomlValues.ts";

export interface HouseRead {
  readonly house: House;
  readonly problems: readonly Problem[];
}

const dateOrders: readonly DateOrder[] = ["ymd", "dmy", "mdy"];

/** How far a thermostat may wander where house.toml says nothing: a choice of ours, *common practice*. */
const USUAL_THERMOSTAT_CELSIUS = 2;
/** How long a logger check is trusted where house.toml says nothing: a choice of ours, *common practice*. */
const USUAL_LOGGER_DAYS = 90;

function readKilns(top: TomlReader): readonly Kiln[] {
  const kilns: Kiln[] = [];
  for (const row of top.rows("kilns")) {
    const id = row.text("id");
    const kiln: Kiln = {
      id: id ?? "",
      floorSquareMetres: row.number("floor_m2", 0.01, 10_000),
      heaterKilowatts: row.number("heater_kw", 0, 10_000),
      fanCubicMetresPerHour: row.number("fan_m3_h", 0, 10_000_000),
      probeAtBulb: row.flag("probe_at_bulb") ?? false,
    };
    row.finish();
    if (id === null) row.refuse("id", "A kiln has no id, so no log can name it.", 'Give it one: id = "K1"');
    else if (kilns.some((known) => known.id === id)) {
      row.refuse("id", `Two kilns are called ${id}; the second is left out.`, "Give each kiln an id of its own.");
    } else kilns.push(kiln);
  }
  return kilns;
}

function readFiles(top: TomlReader): ReadonlyMap<string, FileDeclaration> {
  const files = new Map<string, FileDeclaration>();
  const inner = top.inner("files");
  for (const path of inner.keys()) {
    const row = inner.inner(path);
    let encoding = row.text("encoding");
    if (encoding !== null && !isEncoding(encoding)) {
      row.refuse(
        "encoding",
        `There is no encoding called ${encoding}.`,
        'Usual ones: "utf-8", "windows-1252", "utf-16le"',
      );
      encoding = null;
    }
    const named = row.text("delimiter") ?? (row.raw("delimiter") === "\t" ? "\t" : null);
    const delimiter = named === "tab" ? "\t" : named;
    if (delimiter !== null && !/^[^"\r\n\w.\u2212-]$/.test(delimiter)) {
      row.refuse("delimiter", "A delimiter is one character.", 'Usual ones: ",", ";", "\\t"');
    }
    files.set(path, {
      encoding,
      delimiter: delimiter !== null && /^[^"\r\n\w.\u2212-]$/.test(delimiter) ? delimiter : null,
      decimal: row.choice("decimal", [".", ","]),
      dateOrder: row.choice("date_order", dateOrders),
    });
    row.finish();
  }
  return files;
}

function readTolerances(top: TomlReader): House["tolerances"] {
  const inner = top.inner("tolerances");
  const thermostatCelsius = inner.number("thermostat_c", 0, 50) ?? USUAL_THERMOSTAT_CELSIUS;
  const known = [
    ...houseMeasures,
    ...declarationOf("lab").columns.flatMap(({ stem, family }) =>
      family ? family.suffixes.map(({ suffix }) => `${stem}_${suffix}`) : [stem],
    ),
  ];
  const measures: Record<string, number> = {};
  for (const measure of known) {
    const width = inner.number(measure, 0, 1e6);
    if (width !== null) measures[measure] = width;
  }
  inner.finish();
  return { thermostatCelsius, measures };
}

function houseFrom(top: TomlReader): House {
  let timeZone = top.text("time_zone");
  if (timeZone !== null && !isTimeZone(timeZone)) {
    top.refuse(
      "time_zone",
      `There is no time zone called ${timeZone}; until it is mended every local time is read as UTC.`,
      'Use a name of the IANA list: "Europe/Berlin", "America/Chicago".',
    );
    timeZone = null;
  }
  const costs = top.inner("costs");
  const checks = top.inner("checks");
  const shared = top.inner("shared");
  const house: House = {
    name: top.text("name") ?? "Malthouse",
    timeZone: timeZone ?? "UTC",
    units: top.choice("units", ["metric", "us"]) ?? "metric",
    dateOrder: top.choice("date_order", dateOrders) ?? "ymd",
    altitudeMetres: top.number("altitude_m", -500, 6000) ?? 0,
    kilns: readKilns(top),
    tolerances: readTolerances(top),
    costs: {
      currency: costs.text("currency"),
      perKilowattHour: costs.number("kwh", 0, 1e9),
      perLabourHour: costs.number("labour_hour", 0, 1e9),
      perKilogramMalt: costs.number("malt_kg", 0, 1e9),
      perRefusedBatch: costs.number("refused_batch", 0, 1e12),
    },
    files: readFiles(top),
    baselines: readBaselines(top.inner("baselines")),
    checks: { loggerDays: checks.number("logger_days", 1, 10_000) ?? USUAL_LOGGER_DAYS },
    shared: {
      contact: shared.text("contact"),
      note: shared.text("note"),
      showGrowers: shared.flag("show_growers") ?? false,
    },
  };
  for (const reader of [costs, checks, shared, top]) reader.finish();
  return house;
}

const wholeFile = (
  line: number | null,
  rule: string,
  message: string,
  hint: string,
  effect: Problem["effect"],
): Problem => ({
  file: "house.toml",
  line,
  column: null,
  value: null,
  rule,
  message,
  hint,
  effect,
  run: null,
});

/**
 * The house's settings from the text of house.toml, every default filled in; `null` where there is no such file.
 * Never throws: what cannot be used is a Problem and its default stands.
 */
export function readHouse(source: string | null): HouseRead {
  const problems: Problem[] = [];
  if (source === null) {
    const house = houseFrom(new TomlReader({}, "", "", []));
    const message = "There is no house.toml: times are read as UTC, units are metric, dates are ISO.";
    const hint = "Copy data/templates/house.toml into the logs folder and fill it in.";
    return { house, problems: [wholeFile(null, "house-missing", message, hint, "note")] };
  }
  let parsed: Record<string, unknown> = {};
  try {
    parsed = parse(source);
  } catch (error) {
    const line = error instanceof TomlError ? error.line : null;
    const why = error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error);
    problems.push(
      wholeFile(
        line,
        "house-unreadable",
        `house.toml cannot be read: ${why}. Every setting has its default.`,
        "Mend that line; text stands in quotation marks.",
        "file-set-aside",
      ),
    );
  }
  return { house: houseFrom(new TomlReader(parsed, "", source, problems)), problems };
}
