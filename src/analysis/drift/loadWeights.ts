import { requireTimeOrder } from "./driftSeries.ts";

/** The spread between loads beyond what their own standard errors explain, and what each load then counts. */
export interface LoadWeights {
  /** In the value's unit; 0 where the standard errors alone explain how far neighbours differ. */
  readonly betweenLoads: number;
  /** 1/(betweenLoads² + standardError²), over their mean. */
  readonly weights: Float64Array;
}

/**
 * Weights for values whose standard errors differ. A load's own error is seldom all that moves it, and weighting by it
 * alone would let a few well-read loads decide everything; so the spread between loads is taken from neighbours first:
 * half the mean squared difference of neighbours (von Neumann 1941, Annals of Mathematical Statistics 12, 367–395; from memory),
 * which a slow drift hardly touches, less the mean squared standard error.
 *
 * @throws RangeError for fewer than three values, lengths that differ, or a standard error that is negative or not finite
 */
export function loadWeights(
  days: ArrayLike<number>,
  values: ArrayLike<number>,
  standardErrors: ArrayLike<number>,
): LoadWeights {
  requireTimeOrder(days, values, "loadWeights");
  const count = values.length;
  if (count < 3) throw new RangeError(`loadWeights requires at least three values; got ${count}`);
  if (standardErrors.length !== count) {
    throw new RangeError(`loadWeights requires a standard error a load; got ${standardErrors.length} for ${count}`);
  }
  let ownSquares = 0;
  let differenceSquares = 0;
  for (let at = 0; at < count; at += 1) {
    const own = standardErrors[at] as number;
    if (!(own >= 0 && Number.isFinite(own))) {
      throw new RangeError(`loadWeights requires standard errors of 0 or more; got ${own} at ${at}`);
    }
    ownSquares += own * own;
    if (at > 0) differenceSquares += ((values[at] as number) - (values[at - 1] as number)) ** 2;
  }
  const between = Math.max(0, differenceSquares / (2 * (count - 1)) - ownSquares / count);
  const variances = Float64Array.from(standardErrors, (own) => between + own * own);
  if (variances.some((variance) => variance === 0)) {
    return { betweenLoads: Math.sqrt(between), weights: new Float64Array(count).fill(1) };
  }
  const meanPrecision = variances.reduce((sum, variance) => sum + 1 / variance, 0) / count;
  return { betweenLoads: Math.sqrt(between), weights: variances.map((variance) => 1 / variance / meanPrecision) };
}
