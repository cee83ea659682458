import { studentTQuantile } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";

/** Two estimates with their variances and covariance. */
export interface EstimatedPair {
  readonly numerator: number;
  readonly denominator: number;
  readonly numeratorVariance: number;
  readonly denominatorVariance: number;
  readonly covariance: number;
}

/**
 * The ratio of two estimates with Fieller's interval (1954, Journal of the Royal Statistical Society B 16, 175–185; from
 * memory): all ratios ρ for which numerator − ρ denominator does not differ from 0. In a straight line's inverse (which x
 * gives this y?) it is the profile interval of that x. Not symmetric, as such a ratio is not.
 *
 * @returns null where the denominator's own interval includes 0, so that the ratio may be anything
 * @throws RangeError for variances below 0, or degrees of freedom not above 0
 */
export function ratioInterval(pair: EstimatedPair, degreesOfFreedom: number, level = 0.95): Interval | null {
  const { numerator, denominator, numeratorVariance, denominatorVariance, covariance } = pair;
  if (!(numeratorVariance >= 0 && denominatorVariance >= 0)) {
    throw new RangeError(
      `ratioInterval requires variances of 0 or more; got ${numeratorVariance} and ${denominatorVariance}`,
    );
  }
  const quantile = studentTQuantile(0.5 + level / 2, degreesOfFreedom);
  const square = quantile * quantile;
  // (n − ρd)² = t² Var(n − ρd), a quadratic in ρ: a ρ² − 2b ρ + c = 0.
  const a = denominator * denominator - square * denominatorVariance;
  if (!(a > 0)) return null;
  const b = numerator * denominator - square * covariance;
  const c = numerator * numerator - square * numeratorVariance;
  const reach = Math.sqrt(Math.max(0, b * b - a * c));
  return { estimate: numerator / denominator, low: (b - reach) / a, high: (b + reach) / a };
}
