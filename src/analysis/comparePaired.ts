import { studentTQuantile, studentTTwoSidedP } from "./distributions.ts";
import { automaticLags, longRunSumVariance } from "./neweyWest.ts";
import type { Interval } from "./regressionFit.ts";
import { mean } from "./summary.ts";

/** Mean difference of squared errors; below 0 where the first way of guessing erred less. */
export interface PairedComparison extends Interval {
  readonly standardError: number;
  readonly p: number;
  /** How many neighbours the standard error takes into account. */
  readonly lags: number;
  readonly observations: number;
}

/** Fewer pairs than this say nothing of how far the differences scatter. */
const fewestPairs = 5;

/**
 * Compares two ways of guessing by their one-step-ahead errors on the same observations in time order: the mean of
 * a² − b² with an interval. Diebold and Mariano (1995, Journal of Business and Economic Statistics 13, 253–263), with a
 * Bartlett-weighted long-run variance over {@link automaticLags} lags unless told otherwise, the small-sample factor of
 * Harvey, Leybourne and Newbold (1997, International Journal of Forecasting 13, 281–291) with h = lags + 1, and Student's
 * t with n − 1 degrees of freedom; all from memory. With 0 lags it is the paired t interval of the squared errors.
 *
 * @returns null for fewer than five pairs
 * @throws RangeError for lists of unequal length or errors that are not finite
 */
export function comparePaired(
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  options: { readonly level?: number; readonly lags?: number } = {},
): PairedComparison | null {
  if (a.length !== b.length) throw new RangeError(`comparePaired requires pairs; got ${a.length} and ${b.length}`);
  const differences = Float64Array.from(a, (error, at) => error * error - (b[at] as number) ** 2);
  const broken = differences.findIndex((difference) => !Number.isFinite(difference));
  if (broken >= 0) throw new RangeError(`comparePaired requires finite errors; got another at ${broken}`);
  return differences.length < fewestPairs ? null : meanWithSerialError(differences, options);
}

/**
 * The mean of a series whose neighbours may be related, with its interval: the core of {@link comparePaired}.
 *
 * @throws RangeError for fewer than two values, or so many lags that the correction is not positive
 */
export function meanWithSerialError(
  series: ArrayLike<number>,
  options: { readonly level?: number; readonly lags?: number } = {},
): PairedComparison {
  const observations = series.length;
  if (observations < 2) throw new RangeError(`meanWithSerialError requires at least two values; got ${observations}`);
  const lags = options.lags ?? automaticLags(observations);
  const estimate = mean(series);
  const variance =
    longRunSumVariance(
      Float64Array.from(series, (value) => value - estimate),
      lags,
    ) /
    observations ** 2;
  const ahead = lags + 1;
  const correction = (observations + 1 - 2 * ahead + (ahead * (ahead - 1)) / observations) / observations;
  if (!(correction > 0))
    throw new RangeError(`meanWithSerialError requires fewer lags; got ${lags} for ${observations}`);
  const standardError = Math.sqrt(variance / correction);
  const reach = studentTQuantile(0.5 + (options.level ?? 0.95) / 2, observations - 1) * standardError;
  const p = estimate === 0 ? 1 : studentTTwoSidedP(estimate / standardError, observations - 1);
  return { estimate, low: estimate - reach, high: estimate + reach, standardError, p, lags, observations };
}
