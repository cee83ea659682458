import { studentTQuantile, studentTTwoSidedP } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { mean, sampleStandardDeviation } from "../summary.ts";

/** The second mean less the first, with its interval. */
export interface TwoSample extends Interval {
  readonly standardError: number;
  readonly t: number;
  readonly degreesOfFreedom: number;
  readonly p: number;
}

/**
 * The difference of two means, nothing adjusted. Spreads are each sample's own, with the degrees of freedom of Welch
 * (1947, Biometrika 34, 28–35) and Satterthwaite, or pooled where `pooled` says that they are one.
 *
 * @throws RangeError for fewer than two values in a sample, or samples that both do not vary
 */
export function twoSample(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  { pooled = false, level = 0.95 }: { readonly pooled?: boolean; readonly level?: number } = {},
): TwoSample {
  const [n1, n2] = [first.length, second.length];
  const [v1, v2] = [sampleStandardDeviation(first) ** 2, sampleStandardDeviation(second) ** 2];
  if (v1 + v2 === 0) throw new RangeError("twoSample requires samples that vary; got two that do not");
  const [of1, of2] = [v1 / n1, v2 / n2];
  const common = ((n1 - 1) * v1 + (n2 - 1) * v2) / (n1 + n2 - 2);
  const standardError = Math.sqrt(pooled ? common * (1 / n1 + 1 / n2) : of1 + of2);
  const degreesOfFreedom = pooled ? n1 + n2 - 2 : (of1 + of2) ** 2 / (of1 ** 2 / (n1 - 1) + of2 ** 2 / (n2 - 1));
  const estimate = mean(second) - mean(first);
  const t = estimate / standardError;
  const reach = studentTQuantile(0.5 + level / 2, degreesOfFreedom) * standardError;
  return {
    estimate,
    low: estimate - reach,
    high: estimate + reach,
    standardError,
    t,
    degreesOfFreedom,
    p: studentTTwoSidedP(t, degreesOfFreedom),
  };
}
