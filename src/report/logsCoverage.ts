import type { TableName } from "../tables/declarations.ts";
import type { Table } from "../tables/table.ts";
import { localParts, startOfLocalDay } from "../units/instant.ts";
import type { LoadRow } from "./loadRow.ts";
import type { MonthCoverage } from "./logsResult.ts";
import type { RunRow } from "./runRow.ts";

interface MomentColumn {
  readonly column: string;
  /** A date stands for itself in every zone. */
  readonly isDate: boolean;
}

/** When a row of each table begins. What has no date of its own (samples, customers, targets) is not in it. */
const momentColumns: Readonly<Partial<Record<TableName, MomentColumn>>> = {
  "grain-lots": { column: "received_on", isDate: true },
  steeping: { column: "started_at", isDate: false },
  germination: { column: "started_at", isDate: false },
  "acrospire-counts": { column: "counted_at", isDate: false },
  kilning: { column: "loaded_at", isDate: false },
  readings: { column: "at", isDate: false },
  weather: { column: "at", isDate: false },
  "logger-checks": { column: "at", isDate: false },
  lab: { column: "tested_on", isDate: true },
  orders: { column: "due_on", isDate: true },
  deliveries: { column: "shipped_on", isDate: true },
  events: { column: "on", isDate: true },
};

/** What shows that the house was at work. A lot bought years ago or an order for next year does not. */
const batchTables: readonly TableName[] = ["steeping", "germination", "kilning"];

interface Month {
  /** `2026-10`. */
  readonly name: string;
  readonly from: number;
  readonly before: number;
}

const monthName = (year: number, month: number): string => `${year}-${String(month).padStart(2, "0")}`;

/** Tells the local month of an instant. Each month's bounds are worked out once, since readings come by the million. */
export function monthTeller(timeZone: string): (instant: number) => string {
  const months: Month[] = [];
  let last: Month | undefined;
  const holds = (month: Month, instant: number): boolean => instant >= month.from && instant < month.before;
  return (instant) => {
    if (last && holds(last, instant)) return last.name;
    last = months.find((month) => holds(month, instant));
    if (!last) {
      const { year, month } = localParts(instant, timeZone);
      const next = month === 12 ? monthName(year + 1, 1) : monthName(year, month + 1);
      last = {
        name: monthName(year, month),
        from: startOfLocalDay(`${monthName(year, month)}-01`, timeZone),
        before: startOfLocalDay(`${next}-01`, timeZone),
      };
      months.push(last);
    }
    return last.name;
  };
}

type Counts = Record<keyof Omit<MonthCoverage, "month" | "rows">, number> & {
  rows: Partial<Record<TableName, number>>;
};

const noCounts = (): Counts => ({
  rows: {},
  loads: 0,
  loadsWithAir: 0,
  loadsWithDepth: 0,
  loadsWithReadings: 0,
  runsWithFinalMoisture: 0,
  runsWithYield: 0,
});

/**
 * How much of each month each log covers, earliest month first. A month without anything is listed too where batches were
 * made before and after it: a hole in the logs is what the page is there to show.
 *
 * Rows count in the month they begin; loads and runs in the month they were unloaded. A load has its air when it has one
 * at loading or over the load.
 *
 * @param tables as `readLogs` gives them
 * @param runs every run, whatever the view
 * @param loads every load
 * @param timeZone IANA name of the house's zone
 * @param readingsByMonth rows of readings/, where they are not among the tables
 */
export function logsCoverage(
  tables: ReadonlyMap<TableName, Table>,
  runs: readonly RunRow[],
  loads: readonly LoadRow[],
  timeZone: string,
  readingsByMonth: ReadonlyMap<string, number> = new Map(),
): readonly MonthCoverage[] {
  const months = new Map<string, Counts>();
  const tellMonth = monthTeller(timeZone);
  const countsOf = (month: string): Counts => {
    const counts = months.get(month) ?? noCounts();
    months.set(month, counts);
    return counts;
  };
  for (const [name, { column, isDate }] of Object.entries(momentColumns) as [TableName, MomentColumn][]) {
    const moments = tables.get(name)?.columns.get(column);
    if (!(moments instanceof Float64Array)) continue;
    for (const moment of moments) {
      if (Number.isNaN(moment)) continue;
      const { rows } = countsOf(isDate ? new Date(moment).toISOString().slice(0, 7) : tellMonth(moment));
      rows[name] = (rows[name] ?? 0) + 1;
    }
  }
  for (const [month, rows] of readingsByMonth) countsOf(month).rows.readings = rows;
  for (const load of loads) {
    if (load.unloadedAt === null) continue;
    const counts = countsOf(tellMonth(load.unloadedAt));
    counts.loads += 1;
    if (load.airAtLoading ?? load.airOverLoad) counts.loadsWithAir += 1;
    if (load.bedDepthMetres !== null) counts.loadsWithDepth += 1;
    if (load.readingsFile !== null) counts.loadsWithReadings += 1;
  }
  for (const run of runs) {
    if (run.unloadedAt === null) continue;
    const counts = countsOf(tellMonth(run.unloadedAt));
    if (run.finalMoisturePercent !== null) counts.runsWithFinalMoisture += 1;
    if (run.dryMatterYieldPercent !== null) counts.runsWithYield += 1;
  }
  const working = [...months].filter(([, { rows, loads }]) => loads > 0 || batchTables.some((name) => rows[name]));
  const listed = new Set([...months.keys(), ...monthsFromTo(working.map(([month]) => month))]);
  return [...listed].sort().map((month) => ({ month, ...(months.get(month) ?? noCounts()) }));
}

/** Every month from the earliest to the latest of `names`. */
function monthsFromTo(names: readonly string[]): readonly string[] {
  const sorted = names.toSorted();
  const last = sorted.at(-1);
  const all: string[] = [];
  for (let name = sorted[0]; name !== undefined && last !== undefined && name <= last; ) {
    all.push(name);
    const [year = 0, month = 0] = name.split("-").map(Number);
    name = month === 12 ? monthName(year + 1, 1) : monthName(year, month + 1);
  }
  return all;
}
