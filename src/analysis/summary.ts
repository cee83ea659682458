import {
  mean as arithmeticMean,
  quantile as linearQuantile,
  sampleStandardDeviation as standardDeviationOf,
} from "simple-statistics";

function requireCount(values: ArrayLike<number>, least: number, caller: string): number[] {
  if (values.length < least) {
    throw new RangeError(
      `${caller} requires at least ${least} ${least === 1 ? "value" : "values"}; got ${values.length}`,
    );
  }
  return Array.from(values);
}

/** Arithmetic mean of one value or more, summed with compensation so that many values lose no digits. */
export function mean(values: ArrayLike<number>): number {
  return arithmeticMean(requireCount(values, 1, "mean"));
}

/** Standard deviation of a sample of two or more, with n − 1. */
export function sampleStandardDeviation(values: ArrayLike<number>): number {
  return standardDeviationOf(requireCount(values, 2, "sampleStandardDeviation"));
}

/**
 * Quantile of one value or more, `p` from 0 to 1, by straight lines between the ordered values at (n − 1)p: type 7 of
 * Hyndman and Fan (1996), which R uses unless told otherwise.
 */
export function quantile(values: ArrayLike<number>, p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`quantile requires p from 0 to 1; got ${p}`);
  return linearQuantile(requireCount(values, 1, "quantile"), p);
}

/** The middle of one value or more, or the mean of the middle two. */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}
