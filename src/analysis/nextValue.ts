import { studentTQuantile } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";
import { mean, sampleStandardDeviation } from "./summary.ts";

/**
 * Where one further value is to be expected, given values of the same kind: mean ± t·s·√(1 + 1/n), the two-sided
 * prediction interval for one future observation from a normal distribution (Hahn and Meeker, Statistical Intervals,
 * 1991, section 4.7; formula from memory). It holds as far as the next value comes about like the former ones.
 *
 * @param values n of them, n ≥ 2, in any unit
 * @param coverage chance that the interval holds the next value, 0.9 for 90 %
 * @throws {RangeError} with fewer than two values, or a coverage that is no chance
 */
export function nextValueInterval(values: readonly number[], coverage: number): Interval {
  if (!(coverage > 0 && coverage < 1))
    throw new RangeError(`nextValueInterval requires 0 < coverage < 1; got ${coverage}`);
  if (values.length < 2) throw new RangeError(`nextValueInterval requires at least two values; got ${values.length}`);
  const estimate = mean(values);
  const reach =
    studentTQuantile((1 + coverage) / 2, values.length - 1) *
    sampleStandardDeviation(values) *
    Math.sqrt(1 + 1 / values.length);
  return { estimate, low: estimate - reach, high: estimate + reach };
}
