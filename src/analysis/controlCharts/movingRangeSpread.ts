import { chiSquareQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { c4, d2, d3 } from "./constants.ts";

/** A standard deviation taken from moving ranges, and how much it is worth. */
export interface MovingRangeSpread {
  /** Average moving range / d₂, in the measure's unit. */
  readonly sigma: number;
  readonly averageMovingRange: number;
  /** Moving ranges that were averaged. */
  readonly ranges: number;
  /** Variance of the estimate over its square, for independent normal values. */
  readonly relativeVariance: number;
  /** Degrees of freedom, whole or not, of the sample standard deviation that would be as uncertain. */
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
 * Degrees of freedom ν of the chi distribution whose variance over its squared mean is `relativeVariance`, that is
 * 1/c₄(ν + 1)² − 1: Patnaik's approximation (1950, Biometrika 37, 78–87; from memory).
 *
 * @throws RangeError for a relative variance that is not between 0 and 1
 */
export function matchedDegreesOfFreedom(relativeVariance: number): number {
  if (!(relativeVariance > 0 && relativeVariance < 1)) {
    throw new RangeError(
      `matchedDegreesOfFreedom requires a relative variance between 0 and 1; got ${relativeVariance}`,
    );
  }
  // 1/c₄² − 1 falls from 1.25 at ν = 0.5 like 1/(2ν) and lies between 1/(2ν) and 1/ν: bisect between those.
  let low = 0.25 / relativeVariance;
  let high = 1 / relativeVariance;
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2;
    if (1 / c4(middle + 1) ** 2 - 1 > relativeVariance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
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
    degreesOfFreedom: matchedDegreesOfFreedom(relativeVariance),
  };
}

/**
 * The interval of a spread: with ν its matched degrees of freedom, σ̂/σ is taken as χ_ν/(√ν c₄(ν + 1)), which has the
 * mean and variance that the moving-range estimate has, so that σ runs from σ̂ √ν c₄/√χ²(upper) to σ̂ √ν c₄/√χ²(lower).
 * It holds for independent normal values; neighbours that resemble each other make moving ranges, and this, too small.
 */
export function spreadInterval(spread: MovingRangeSpread, level = 0.95): Interval {
  const nu = spread.degreesOfFreedom;
  const scaled = spread.sigma * Math.sqrt(nu) * c4(nu + 1);
  return {
    estimate: spread.sigma,
    low: scaled / Math.sqrt(chiSquareQuantile(0.5 + level / 2, nu)),
    high: scaled / Math.sqrt(chiSquareQuantile(0.5 - level / 2, nu)),
  };
}
