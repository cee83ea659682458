import { fQuantile } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";
import { sampleStandardDeviation } from "./summary.ts";

/**
 * The first standard deviation over the second, with the interval from F (R's `var.test`, as a ratio of standard
 * deviations). It takes values to be normal, and is misled by outliers.
 *
 * @returns null where the second sample does not vary
 * @throws {RangeError} for fewer than two values in a sample
 */
export function spreadRatio(first: ArrayLike<number>, second: ArrayLike<number>, level = 0.95): Interval | null {
  const [one, other] = [sampleStandardDeviation(first), sampleStandardDeviation(second)];
  if (!(other > 0)) return null;
  const estimate = one / other;
  const tail = (1 - level) / 2;
  const [d1, d2] = [first.length - 1, second.length - 1];
  return {
    estimate,
    low: estimate / Math.sqrt(fQuantile(1 - tail, d1, d2)),
    high: estimate / Math.sqrt(fQuantile(tail, d1, d2)),
  };
}
