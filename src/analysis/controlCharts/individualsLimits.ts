import { studentTQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { mean } from "../summary.ts";
import { type MovingRangeSpread, movingRangeSpread, spreadInterval } from "./movingRangeSpread.ts";

/** Limits of an individuals chart and how well the baseline knows them, in the measure's unit. */
export interface IndividualsLimits {
  /** Mean of the baseline, with the interval that its size allows. */
  readonly centre: Interval;
  /** Standard deviation of single values, from moving ranges, with its interval. */
  readonly sigma: Interval;
  /** The lower limit, with its interval. */
  readonly low: Interval;
  /** The upper limit, with its interval. */
  readonly high: Interval;
  /** Limits lie this many sigma from the centre. */
  readonly multiplier: number;
  /** Values in the baseline that gave the centre. */
  readonly count: number;
  readonly spread: MovingRangeSpread;
}

/**
 * Centre and limits of an individuals chart from one baseline in time order: mean ± multiplier × (average moving range
 * / d₂), d₂ = 2/√π (e-Handbook 6.3.2.2; it prints d₂ as 1.128). Pass `spread` where it comes from elsewhere, as when
 * several varieties pool theirs.
 *
 * The interval of sigma is that of `spreadInterval`; of the centre, mean ± t σ/√n with the spread's degrees of freedom;
 * of the limits, both joined by the method of variance estimates recovery (Zou and Donner 2008, Statistics in Medicine
 * 27, 1693–1702; from memory): the distances of the two parts' own bounds from their estimates, added as squares.
 *
 * @returns null for fewer than two values with no spread given, or values that do not vary: there are no limits then
 * @throws RangeError for an empty baseline or a multiplier that is not positive
 * @example individualsLimits([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])?.high.estimate // 55.8024
 */
export function individualsLimits(
  values: ArrayLike<number>,
  options: { readonly multiplier?: number; readonly spread?: MovingRangeSpread | null; readonly level?: number } = {},
): IndividualsLimits | null {
  const { multiplier = 3, level = 0.95 } = options;
  if (!(multiplier > 0)) throw new RangeError(`individualsLimits requires a positive multiplier; got ${multiplier}`);
  const count = values.length;
  const middle = mean(values);
  const spread = options.spread === undefined ? movingRangeSpread([values]) : options.spread;
  if (spread === null || spread.sigma === 0) return null;
  const sigma = spreadInterval(spread, level);
  const reach = (studentTQuantile(0.5 + level / 2, spread.degreesOfFreedom) * spread.sigma) / Math.sqrt(count);
  const centre = { estimate: middle, low: middle - reach, high: middle + reach };
  const toHigher = Math.hypot(reach, multiplier * (sigma.high - sigma.estimate));
  const toLower = Math.hypot(reach, multiplier * (sigma.estimate - sigma.low));
  const high = middle + multiplier * spread.sigma;
  const low = middle - multiplier * spread.sigma;
  return {
    centre,
    sigma,
    low: { estimate: low, low: low - toHigher, high: low + toLower },
    high: { estimate: high, low: high - toLower, high: high + toHigher },
    multiplier,
    count,
    spread,
  };
}
