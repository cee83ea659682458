import { comparePaired, type PairedComparison } from "./comparePaired.ts";
import type { Interval } from "./regressionFit.ts";
import { mean } from "./summary.ts";
import { wilsonInterval } from "./wilsonInterval.ts";

/** Forecasts of one group: what was said on the average, and how often it came. */
export interface ForecastGroup {
  readonly said: number;
  readonly seen: Interval;
  readonly forecasts: number;
}

export interface BrierComparison {
  readonly brierScore: number;
  readonly brierOfOther: number;
  /** Score less the other's, over the same events; below 0 where the score foretold better. */
  readonly difference: PairedComparison;
}

/**
 * Chances said beforehand against what came: the mean squared difference (Brier 1950, Monthly Weather Review 78, 1–3),
 * and the same for another way of saying them, with the interval of the paired difference of `comparePaired`.
 *
 * @param said chances from 0 to 1 in time order; `other` likewise
 * @param came whether each event came
 * @returns null for fewer than five events
 * @throws {RangeError} for lists of unequal length or a chance outside 0 to 1
 */
export function brierComparison(
  said: readonly number[],
  other: readonly number[],
  came: readonly boolean[],
): BrierComparison | null {
  if (said.length !== came.length || other.length !== came.length) {
    throw new RangeError(`brierComparison requires pairs; got ${said.length}, ${other.length} and ${came.length}`);
  }
  const errors = (chances: readonly number[]): number[] =>
    chances.map((chance, at) => {
      if (!(chance >= 0 && chance <= 1)) throw new RangeError(`a chance lies between 0 and 1; got ${chance} at ${at}`);
      return chance - (came[at] ? 1 : 0);
    });
  const [own, others] = [errors(said), errors(other)];
  const difference = comparePaired(own, others);
  if (difference === null) return null;
  const score = (list: readonly number[]): number => mean(list.map((error) => error * error));
  return { brierScore: score(own), brierOfOther: score(others), difference };
}

/**
 * Forecasts in order of what was said, in groups of nearly equal size, for a reliability drawing (Murphy and Winkler
 * 1977, Applied Statistics 26, 41–47; from memory).
 *
 * @param most at most so many groups
 * @param least and each of at least so many forecasts, as far as there are so many at all
 */
export function reliabilityGroups(
  said: readonly number[],
  came: readonly boolean[],
  most = 5,
  least = 10,
): readonly ForecastGroup[] {
  const count = said.length;
  if (count === 0) return [];
  const groups = Math.max(1, Math.min(most, Math.floor(count / least)));
  const ordered = said.map((chance, at) => ({ chance, came: came[at] === true })).sort((a, b) => a.chance - b.chance);
  return Array.from({ length: groups }, (_, at) => {
    const part = ordered.slice(Math.floor((at * count) / groups), Math.floor(((at + 1) * count) / groups));
    const times = part.filter((forecast) => forecast.came).length;
    return {
      said: mean(part.map(({ chance }) => chance)),
      seen: wilsonInterval(times, part.length),
      forecasts: part.length,
    };
  });
}
