import { powerLimitedShare } from "../malting/heaterLimit.ts";
import type { CsvTable, DuckType } from "../tables/csvTable.ts";
import { contentDigest } from "./contentDigest.ts";
import { type LoadCurve, writeLoadCurve } from "./loadCurve.ts";
import type { LoadRow } from "./loadRow.ts";

/** What must be known of a load to sum its readings up. */
export type SummedLoad = Pick<LoadRow, "load" | "loadedAt" | "cureStartedAt" | "dryingSetCelsius">;

export interface ReadingsFile {
  readonly load: string;
  /** Relative to the tables' folder; named by its content. */
  readonly file: string;
  readonly csv: Uint8Array;
}

/** What the raw readings come to for one load: the browser gets this and never the raw readings. */
interface Summary {
  readonly load: string;
  readonly readings: number;
  readonly power_limited_share: number | null;
  readonly fan_share_of_hold: number | null;
  readonly readings_file: string;
}

const summaryColumns: Readonly<Record<keyof Summary, DuckType>> = {
  load: "VARCHAR",
  readings: "INTEGER",
  power_limited_share: "DOUBLE",
  fan_share_of_hold: "DOUBLE",
  readings_file: "VARCHAR",
};

function shareOf(load: SummedLoad, curve: LoadCurve): number | null {
  const { loadedAt, cureStartedAt, dryingSetCelsius } = load;
  if (cureStartedAt === null || dryingSetCelsius === null || cureStartedAt <= loadedAt) return null;
  return powerLimitedShare(curve, dryingSetCelsius, loadedAt, cureStartedAt);
}

const cell = (value: string | number | null): string =>
  typeof value === "string" ? `"${value.replaceAll('"', '""')}"` : String(value ?? "");

/**
 * One small file a load and the table `load_readings` that sums them up, one row a load with readings.
 *
 * @param curves by load, from `readingsByLoad`
 * @param fanShares of the drying hold, by load, where the readings say when the fan ran
 */
export function publishReadings(
  loads: readonly SummedLoad[],
  curves: ReadonlyMap<string, LoadCurve>,
  fanShares: ReadonlyMap<string, number> = new Map(),
): { readonly files: readonly ReadingsFile[]; readonly table: CsvTable } {
  const encoder = new TextEncoder();
  const files: ReadingsFile[] = [];
  const lines = [Object.keys(summaryColumns).join(",")];
  for (const load of loads) {
    const curve = curves.get(load.load);
    if (!curve) continue;
    const csv = encoder.encode(writeLoadCurve(curve, load.loadedAt));
    const file = `readings/${contentDigest(csv)}.csv`;
    files.push({ load: load.load, file, csv });
    const summary: Summary = {
      load: load.load,
      readings: curve.at.length,
      power_limited_share: shareOf(load, curve),
      fan_share_of_hold: fanShares.get(load.load) ?? null,
      readings_file: file,
    };
    lines.push((Object.keys(summaryColumns) as (keyof Summary)[]).map((name) => cell(summary[name])).join(","));
  }
  return {
    files,
    table: { name: "load_readings", columns: summaryColumns, csv: encoder.encode(`${lines.join("\n")}\n`) },
  };
}
