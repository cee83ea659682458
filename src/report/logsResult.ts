import type { TableName } from "../tables/declarations.ts";
import type { Problem } from "../tables/problem.ts";

/** What became of one file. */
export interface FileRead {
  readonly path: string;
  readonly table: TableName | null;
  readonly rows: number;
  readonly rowsSetAside: number;
  readonly valuesBlanked: number;
  readonly notes: number;
}

/** How much of each month each log covers: rows that start in it, by table. */
export interface MonthCoverage {
  /** `2026-10`, local. */
  readonly month: string;
  readonly rows: Readonly<Partial<Record<TableName, number>>>;
  /** Loads unloaded in the month, and how many of them have what each analysis needs. */
  readonly loads: number;
  readonly loadsWithAir: number;
  readonly loadsWithDepth: number;
  readonly loadsWithReadings: number;
  readonly runsWithFinalMoisture: number;
  readonly runsWithYield: number;
}

export interface LogsResult {
  readonly files: readonly FileRead[];
  /** Every one, by file and line. */
  readonly problems: readonly Problem[];
  readonly months: readonly MonthCoverage[];
}
