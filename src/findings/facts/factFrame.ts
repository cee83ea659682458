import type { Interval } from "../../analysis/regressionFit.ts";
import type { MonthlyLoss } from "../../report/fact.ts";
import type { Report } from "../../report/report.ts";
import type { RunRow } from "../../report/runRow.ts";

/** The month that is looked at, and everything known by its end. */
export interface FactFrame {
  /** `2026-10`. */
  readonly month: string;
  /** The month's first moment, and the first after it. */
  readonly from: number;
  readonly before: number;
  /** As it stood at the end of the month: rows and parts made of nothing later. */
  readonly report: FactReport;
  /** Batches unloaded in the month; earliest first. */
  readonly monthRuns: readonly RunRow[];
  /** Batches that left the floor in the month and whose kiln row was set aside, so that they are in no month. */
  readonly lostRuns: readonly RunRow[];
  /** The latest batches, at least {@link LATEST_RUNS} where the logs hold as many, or all of the month's; earliest first. */
  readonly latestRuns: readonly RunRow[];
  /** Energy for a kilogram of water, kWh, of the latest loads over what air and bed account for; null where too little is logged. */
  readonly energyOver: Interval | null;
}

/** What facts are drawn from: the parts of a report but for the review itself, and for changes, of which the month's events tell. */
export type FactReport = Omit<Report, "review" | "changes">;

/** A trouble that came in the middle of a month is judged with the batches since, and six are enough to see one. */
export const LATEST_RUNS = 6;

export const noLoss: MonthlyLoss = {
  kilnHours: 0,
  labourHours: 0,
  kilowattHours: 0,
  kilogramsMalt: 0,
  refusedBatches: 0,
};

/** When a batch left the kiln; batches that have not are not in any month. */
export const unloadedOf = ({ unloadedAt }: RunRow): number => unloadedAt ?? Number.NaN;

const MOST_NAMED = 12;

/** The runs that a fact names: in time order, the latest dozen of them. */
export const namedRuns = (runs: readonly string[]): readonly string[] => runs.slice(-MOST_NAMED);

/** Does anything from one moment to another concern the month, or the batches it is judged by? */
export function concerns({ before, latestRuns, from }: FactFrame, start: number, end: number): boolean {
  const since = Math.min(from, ...latestRuns.map(unloadedOf));
  return end >= since && start < before;
}

/** Batches a month at the house's pace of the last three months, by which a loss is counted. */
export function batchesAMonth({ report, before }: FactFrame): number {
  const since = before - 91.3 * 86_400_000;
  return Math.max(1, report.runs.filter(({ unloadedAt }) => unloadedAt !== null && unloadedAt >= since).length / 3);
}
