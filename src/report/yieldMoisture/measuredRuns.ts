import { mean } from "../../analysis/summary.ts";
import type { ChartedMeasure } from "../controlChartResult.ts";
import type { RunRow } from "../runRow.ts";

/** A batch that has the measure, in the order in which the kiln was emptied; with what a chart says of it taken out of its row. */
export interface MeasuredRun extends Pick<RunRow, "run" | "lot" | "kiln" | "load"> {
  readonly row: RunRow;
  readonly at: number;
  readonly variety: string;
  readonly value: number;
  /** The samples behind the value; a single number written in the log counts as one. */
  readonly samples: readonly number[];
}

export interface MeasuredRuns {
  readonly measured: readonly MeasuredRun[];
  readonly lacking: readonly { readonly reason: string; readonly count: number }[];
}

/** Two samples or more speak for a batch better than the one number written beside it. */
const FEWEST_SAMPLES = 2;

function measuredValue(
  row: RunRow,
  measure: ChartedMeasure,
  samples: readonly number[],
): { readonly value: number; readonly samples: readonly number[] } | null {
  if (measure === "dry_yield_pct") {
    return row.dryMatterYieldPercent === null
      ? null
      : { value: row.dryMatterYieldPercent, samples: [row.dryMatterYieldPercent] };
  }
  if (samples.length >= FEWEST_SAMPLES) return { value: mean(samples), samples };
  return row.finalMoisturePercent === null
    ? null
    : { value: row.finalMoisturePercent, samples: [row.finalMoisturePercent] };
}

function whyLacking(row: RunRow, measure: ChartedMeasure): string {
  if (row.unloadedAt === null) return "not off the kiln yet";
  if (row.variety === null) return "no known grain lot";
  if (measure === "final_moisture_pct" || row.finalMoisturePercent === null) return "no final moisture";
  if (row.maltKilograms === null) return "no malt mass";
  if (row.dryMatterYieldPercent !== null) return "malt weighed with its rootlets alone";
  return "no grain mass or grain moisture";
}

const withRootlets = ({ maltBasis }: RunRow): boolean => maltBasis === "as unloaded";

/**
 * Runs whose malt was weighed with its rootlets where the house weighs it cleaned: their yield is three points and more too high. A
 * house that never cleans before it weighs has them all.
 */
function unlikeOthers(runs: readonly RunRow[]): ReadonlySet<RunRow> {
  const weighed = runs.filter(({ dryMatterYieldPercent }) => dryMatterYieldPercent !== null);
  const uncleaned = weighed.filter(withRootlets);
  return new Set(uncleaned.length * 2 < weighed.length ? uncleaned : []);
}

/** Parts the runs into those that can stand on a chart of `measure` and those that cannot, with the reasons counted. */
export function measuredRuns(
  runs: readonly RunRow[],
  measure: ChartedMeasure,
  samplesOf: ReadonlyMap<string, readonly number[]>,
): MeasuredRuns {
  const measured: MeasuredRun[] = [];
  const reasons = new Map<string, number>();
  const unlike = measure === "dry_yield_pct" ? unlikeOthers(runs) : new Set<RunRow>();
  for (const row of runs) {
    const found = measuredValue(row, measure, samplesOf.get(row.run) ?? []);
    if (found === null || unlike.has(row) || row.unloadedAt === null || row.variety === null) {
      const reason = whyLacking(row, measure);
      reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
    } else {
      const { run, lot, kiln, load, unloadedAt: at, variety } = row;
      measured.push({ row, run, lot, kiln, load, at, variety, ...found });
    }
  }
  measured.sort((a, b) => a.at - b.at || (a.run < b.run ? -1 : 1));
  return { measured, lacking: [...reasons].map(([reason, count]) => ({ reason, count })) };
}
