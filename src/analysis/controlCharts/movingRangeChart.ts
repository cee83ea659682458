import { d2, d3 } from "./constants.ts";
import type { MovingRangeSpread } from "./movingRangeSpread.ts";

/** The chart beside the individuals: how far each value lies from the one before it of the same variety. */
export interface MovingRangeChart {
  /** One for each value; null where the value is the first of its variety. */
  readonly ranges: readonly (number | null)[];
  readonly centre: number;
  /** D₄ × the average moving range; the lower limit is 0. */
  readonly high: number;
}

/**
 * Moving ranges of two against the limit of a baseline: centre the baseline's average moving range, upper limit
 * D₄ = 1 + 3 d₃/d₂ = 3.2665 times that (printed 3.267), lower limit 0 (e-Handbook 6.3.2.2).
 *
 * A moving range is far from normal, so that about 1 in 100 of a quiet process's lie beyond this limit, not 1 in 370;
 * and one value far off makes two large ranges. It is there to be looked at, and no rule of the project's signals on it.
 *
 * @param values in time order, with the variety of each in `groups`
 * @throws RangeError where the two differ in length
 */
export function movingRangeChart(
  values: ArrayLike<number>,
  groups: readonly string[],
  spread: MovingRangeSpread,
): MovingRangeChart {
  if (values.length !== groups.length) {
    throw new RangeError(`movingRangeChart requires a group for each value; got ${values.length} and ${groups.length}`);
  }
  const last = new Map<string, number>();
  const ranges = groups.map((group, at) => {
    const before = last.get(group);
    const value = values[at] as number;
    last.set(group, value);
    return before === undefined ? null : Math.abs(value - before);
  });
  return {
    ranges,
    centre: spread.averageMovingRange,
    high: (1 + (3 * d3(2)) / d2(2)) * spread.averageMovingRange,
  };
}
