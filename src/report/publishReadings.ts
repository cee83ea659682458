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

/** What is made of one load's readings: its file, and its row of `load_readings`. */
export interface PublishedLoad extends ReadingsFile {
  readonly row: string;
}

/**
 * The small file of one load and what its readings come to.
 *
 * @param fanShareOfHold share of the drying hold in which the fan ran; null where the readings do not say
 */
export function publishLoad(load: SummedLoad, curve: LoadCurve, fanShareOfHold: number | null): PublishedLoad {
  const csv = new TextEncoder().encode(writeLoadCurve(curve, load.loadedAt));
  const file = `readings/${contentDigest(csv)}.csv`;
  const summary: Summary = {
    load: load.load,
    readings: curve.at.length,
    power_limited_share: shareOf(load, curve),
    fan_share_of_hold: fanShareOfHold,
    readings_file: file,
  };
  const row = (Object.keys(summaryColumns) as (keyof Summary)[]).map((name) => cell(summary[name])).join(",");
  return { load: load.load, file, csv, row };
}

/** The table `load_readings`, one row a load with readings. */
export function loadReadingsTable(loads: readonly Pick<PublishedLoad, "row">[]): CsvTable {
  const lines = [Object.keys(summaryColumns).join(","), ...loads.map(({ row }) => row)];
  return { name: "load_readings", columns: summaryColumns, csv: new TextEncoder().encode(`${lines.join("\n")}\n`) };
}
