import type { Interval } from "../regressionFit.ts";
import type { ChangeSums } from "./changeSums.ts";

/**
 * One time at which the change may have begun, near enough to the best in likelihood, and what the loads then say of it.
 * A region of these is the joint uncertainty of onset, size and level: every interval and forecast is a union over it.
 */
export interface RegionPoint {
  /** In spans from the middle of the series, as `ChangeSums.times`. */
  readonly onset: number;
  /** Size of a step, or rise of a creep over one span of the series. */
  readonly effect: number;
  /** Weighted squares of the change's column, constant and covariates taken out: 1 over the effect's variance, in σ². */
  readonly information: number;
  /** Weighted mean of the change's column. */
  readonly meanColumn: number;
  /** By how much the residual squares may still grow before this onset is out of the region; 0 or more. */
  readonly slack: number;
}

/**
 * Interval of the effect from its profile likelihood: for each onset the effects that keep the residual squares within the
 * region, effect ± √(slack/information), all taken together.
 */
export function effectInterval(region: readonly RegionPoint[], estimate: number): Interval {
  let low = estimate;
  let high = estimate;
  for (const { effect, information, slack } of region) {
    const reach = Math.sqrt(slack / information);
    if (effect - reach < low) low = effect - reach;
    if (effect + reach > high) high = effect + reach;
  }
  return { estimate, low, high };
}

/**
 * Interval of the level where the change's column stands at `column(onset)`: 0 before the change, 1 after a step, the
 * time since onset in a creep. `extraVariance` is that of an error common to all loads, in the value's unit squared, and
 * `variance` the residual one; they widen each piece.
 */
export function levelInterval(
  sums: ChangeSums,
  region: readonly RegionPoint[],
  best: RegionPoint,
  column: (onset: number) => number,
  extra: { readonly extraVariance: number; readonly variance: number } = { extraVariance: 0, variance: 1 },
): Interval {
  const at = (point: RegionPoint): number => sums.level + point.effect * (column(point.onset) - point.meanColumn);
  const estimate = at(best);
  let low = estimate;
  let high = estimate;
  const common = 1 / sums.totalWeight + extra.extraVariance / extra.variance;
  for (const point of region) {
    const away = column(point.onset) - point.meanColumn;
    const reach = Math.sqrt(point.slack * (common + (away * away) / point.information));
    const centre = at(point);
    if (centre - reach < low) low = centre - reach;
    if (centre + reach > high) high = centre + reach;
  }
  return { estimate, low, high };
}

/** Interval of what the change alone has made of the value where its column stands at `column(onset)`. */
export function changeInterval(
  region: readonly RegionPoint[],
  best: RegionPoint,
  column: (onset: number) => number,
): Interval {
  const estimate = best.effect * column(best.onset);
  let low = estimate;
  let high = estimate;
  for (const { onset, effect, information, slack } of region) {
    const away = column(onset);
    const reach = Math.abs(away) * Math.sqrt(slack / information);
    low = Math.min(low, effect * away - reach);
    high = Math.max(high, effect * away + reach);
  }
  return { estimate, low, high };
}
