import { findFitFault } from "../findFitFault.ts";
import { fitLeastSquares } from "../fitLeastSquares.ts";
import { linearCombination } from "../predict.ts";
import type { Interval } from "../regressionFit.ts";
import { mean } from "../summary.ts";
import type { DriftSeries } from "./driftSeries.ts";

/**
 * How far a straight line through the loads from `first` on may have moved, `aheadDays` after the last of them, from those
 * loads' mean: slope × time since their middle, with its interval. A creep that the loads do not exclude stays within it. Weights and
 * covariates are left out, since it is asked only where no change was found.
 *
 * @returns null where the loads cannot carry a line
 */
export function lineMovesAtMost(series: DriftSeries, first: number, aheadDays: number, level: number): Interval | null {
  const lastDay = series.days[series.days.length - 1] as number;
  const days = Float64Array.from(series.days)
    .subarray(first)
    .map((day) => day - lastDay);
  const values = Float64Array.from(series.values).subarray(first);
  const columns = [{ name: "days", values: days }];
  if (findFitFault(columns, values) !== null) return null;
  return linearCombination(fitLeastSquares(columns, values), [0, aheadDays - mean(days)], level);
}
