import { fQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { effectInterval, levelInterval, type RegionPoint } from "./changeRegion.ts";
import type { ChangeSums } from "./changeSums.ts";
import { fewestLoadsASide } from "./fewestLoads.ts";

/** One level up to a load, another from then on. */
export interface StepFit {
  /** Index of the first load at the new level. */
  readonly firstAfter: number;
  /** Day of that load; the step lies after `low`, a load still at the old level, and by `high`, one at the new. */
  readonly onsetDay: Interval;
  readonly size: Interval;
  readonly levelBefore: Interval;
  readonly levelNow: Interval;
  readonly residualSquares: number;
  readonly degreesOfFreedom: number;
  /** Residual variance that the intervals go by, widened as asked for. */
  readonly variance: number;
  readonly region: readonly RegionPoint[];
  readonly best: RegionPoint;
}

/**
 * Least-squares step with at least three loads either side, so that one odd load is not a step.
 *
 * The onset's interval holds every split whose residual squares exceed the least by no more than s² times
 * −2 ln(1 − √level), 7.35 for 95 %: the likelihood ratio of a split is not chi-square, and this is its limiting quantile
 * (Hansen 2000, Econometrica 68, 575–603, table I; from memory, and as printed there). Size and levels are profile
 * intervals over the splits, by F with 1 degree of freedom.
 *
 * @param widening by how much the residual variance is raised for the intervals, from `changeWidening`
 * @returns null where no split leaves three loads on different days
 */
export function fitStep(sums: ChangeSums, level: number, widening = 1): StepFit | null {
  const { observations, levelParameters, totalSquares, roundingSquares, days, splits } = sums;
  const squaresAt = (split: number): number | null => {
    const { vv, vy } = splits[split] as (typeof splits)[number];
    if ((days[split] as number) === (days[split - 1] as number) || !(vv > 1e-9 * sums.totalWeight)) return null;
    return Math.max(roundingSquares, totalSquares - (vy * vy) / vv);
  };
  const last = observations - fewestLoadsASide;
  let firstAfter = -1;
  let residualSquares = Number.POSITIVE_INFINITY;
  for (let split = fewestLoadsASide; split <= last; split += 1) {
    const squares = squaresAt(split);
    // A tie must be a tie in every engine: the earlier split keeps it.
    if (squares !== null && squares < residualSquares * (1 - 1e-12)) {
      firstAfter = split;
      residualSquares = squares;
    }
  }
  if (firstAfter < 0) return null;

  const degreesOfFreedom = observations - levelParameters - 2;
  const variance = (widening * residualSquares) / degreesOfFreedom;
  const onsetLimit = residualSquares - 2 * Math.log(1 - Math.sqrt(level)) * variance;
  const limit = residualSquares + fQuantile(level, 1, degreesOfFreedom) * variance;
  const region: RegionPoint[] = [];
  let [earliest, latest] = [firstAfter, firstAfter];
  for (let split = fewestLoadsASide; split <= last; split += 1) {
    const squares = squaresAt(split);
    if (squares === null) continue;
    if (squares <= onsetLimit) {
      earliest = Math.min(earliest, split);
      latest = Math.max(latest, split);
    }
    if (squares <= limit) region.push(pointAt(sums, split, limit - squares));
  }
  const best = pointAt(sums, firstAfter, limit - residualSquares);
  return {
    firstAfter,
    onsetDay: {
      estimate: days[firstAfter] as number,
      low: days[earliest - 1] as number,
      high: days[latest] as number,
    },
    size: effectInterval(region, best.effect),
    levelBefore: levelInterval(sums, region, best, () => 0),
    levelNow: levelInterval(sums, region, best, () => 1),
    residualSquares,
    degreesOfFreedom,
    variance,
    region,
    best,
  };
}

function pointAt(sums: ChangeSums, split: number, slack: number): RegionPoint {
  const { vv, vy, meanV } = sums.splits[split] as (typeof sums.splits)[number];
  return { onset: sums.times[split] as number, effect: vy / vv, information: vv, meanColumn: meanV, slack };
}
