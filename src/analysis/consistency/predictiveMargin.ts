import type { ShrunkSpread } from "./shrunkSpread.ts";

/** What is foretold of the next value of one measure: centre + scale × Student's t. */
export interface PredictiveMargin {
  readonly centre: number;
  readonly scale: number;
  readonly degreesOfFreedom: number;
}

/**
 * Student's t for the next value after `count` values with this mean: scale² = s²(1 + 1/n), as in the prediction interval
 * for a single future observation (Hahn and Meeker 1991, Statistical Intervals, 4.7; from memory). The spread is never
 * taken to be less than `leastSpread`, which is what the meter's step alone makes.
 *
 * @throws {RangeError} for no values
 */
export function predictiveMargin(count: number, mean: number, spread: ShrunkSpread, leastSpread = 0): PredictiveMargin {
  if (!(count >= 1)) throw new RangeError(`predictiveMargin requires at least one value; got ${count}`);
  const variance = Math.max(spread.variance, leastSpread * leastSpread);
  return { centre: mean, scale: Math.sqrt(variance * (1 + 1 / count)), degreesOfFreedom: spread.degreesOfFreedom };
}

/** Spread of a value that was rounded to a step, whatever it was before: step/√12, that of a uniform distribution. */
export const spreadOfStep = (step: number): number => step / Math.sqrt(12);

/** Limits in units of the margin's scale, from its centre; a side without a limit stays infinite. */
export function standardised({ centre, scale }: PredictiveMargin, low: number, high: number): StandardLimits {
  if (scale > 0) return { low: (low - centre) / scale, high: (high - centre) / scale };
  // Values that never differed: all of the next are at the centre.
  const certain = (inside: boolean): number => (inside ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY);
  return { low: -certain(centre >= low), high: certain(centre <= high) };
}

/** Limits in units of a margin's scale. */
export interface StandardLimits {
  readonly low: number;
  readonly high: number;
}

/** The chance that a Student t lies between two limits, from the tail beyond each of them: nothing near 1 is subtracted. */
export function chanceFromTails({ low, high }: StandardLimits, lowTail: number, highTail: number): number {
  if (!(low < high)) return 0;
  if (low > 0) return lowTail - highTail;
  return high < 0 ? highTail - lowTail : 1 - lowTail - highTail;
}
