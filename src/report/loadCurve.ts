import type { KilnCurve } from "./runPageResult.ts";

/** All that the logger wrote over one load, in time order; NaN where a probe was silent. */
export interface LoadCurve extends KilnCurve {
  /** Null where the logger has no such probe. */
  readonly airOffHumidityPercent: Float64Array | null;
  /** 0 or 1; null where the logger does not record it. */
  readonly heaterOn: Float64Array | null;
  readonly fanOn: Float64Array | null;
}

type Probe = Exclude<keyof LoadCurve, "at">;

/** The columns of a load's own readings file and the fields they become. */
const probes: readonly (readonly [column: string, field: Probe])[] = [
  ["air_on_c", "airOnCelsius"],
  ["air_off_c", "airOffCelsius"],
  ["bed_c", "bedCelsius"],
  ["air_off_rh_pct", "airOffHumidityPercent"],
  ["heater_on", "heaterOn"],
  ["fan_on", "fanOn"],
];

/** Loggers resolve a tenth of a degree at best; two decimals keep that after a conversion from °F. */
const DECIMALS = 2;
const UNIT_OF_TIME = "seconds since ";

const isSilent = (values: Float64Array): boolean => values.every((value) => Number.isNaN(value));

/**
 * The readings of one load as a file of its own, as small as it can be: seconds since loading (the moment stands in the
 * column's name) and the probes that said anything.
 */
export function writeLoadCurve(curve: LoadCurve, loadedAt: number): string {
  const columns = probes.flatMap(([column, field]) => {
    const values = curve[field];
    return values === null || isSilent(values) ? [] : [{ column, values }];
  });
  const header = [`${UNIT_OF_TIME}${new Date(loadedAt).toISOString()}`, ...columns.map(({ column }) => column)].join(
    ",",
  );
  const lines = Array.from(curve.at, (at, row) => {
    const cells = columns.map(({ values }) => {
      const value = values[row] as number;
      return Number.isNaN(value) ? "" : String(Number(value.toFixed(DECIMALS)));
    });
    return [Math.round((at - loadedAt) / 1000), ...cells].join(",");
  });
  return `${[header, ...lines].join("\n")}\n`;
}

/**
 * The inverse of {@link writeLoadCurve}, for run pages and the browser.
 *
 * @throws {RangeError} when the text is not such a file
 */
export function parseLoadReadings(csv: string): LoadCurve {
  const [header = "", ...lines] = csv.trimEnd().split("\n");
  const [time = "", ...names] = header.split(",");
  const loadedAt = time.startsWith(UNIT_OF_TIME) ? Date.parse(time.slice(UNIT_OF_TIME.length)) : Number.NaN;
  if (Number.isNaN(loadedAt)) {
    throw new RangeError(`parseLoadReadings requires a load's readings file; got ${header.slice(0, 80)}`);
  }
  const rows = lines.map((line) => line.split(","));
  const found = new Map(
    names.map((name, at) => [name, Float64Array.from(rows, (cells) => Number(cells[at + 1] || Number.NaN))] as const),
  );
  const of = (name: string): Float64Array => found.get(name) ?? new Float64Array(rows.length).fill(Number.NaN);
  return {
    at: Float64Array.from(rows, ([seconds]) => loadedAt + Number(seconds) * 1000),
    airOnCelsius: of("air_on_c"),
    airOffCelsius: of("air_off_c"),
    bedCelsius: of("bed_c"),
    airOffHumidityPercent: found.get("air_off_rh_pct") ?? null,
    heaterOn: found.get("heater_on") ?? null,
    fanOn: found.get("fan_on") ?? null,
  };
}
