import { chiSquareQuantile, fQuantile, fUpperTail } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";
import { mean } from "./summary.ts";

/** Where the spread of grouped values lies. Standard deviations in the values' unit. */
export interface VarianceSplit {
  readonly groups: number;
  readonly values: number;
  readonly meanSquareBetween: number;
  readonly meanSquareWithin: number;
  readonly f: number;
  readonly p: number;
  readonly rSquared: number;
  readonly between: Interval;
  readonly within: Interval;
  /** Share of the variance that lies between groups, 0 to 1. */
  readonly shareBetween: Interval;
}

/**
 * One-way random effects, groups of unequal size. Estimates are those of the analysis of variance (σ_b² = (MSB − MSW) / n₀,
 * n₀ = (N − Σn²/N) / (k − 1), 0 where that is negative; Searle, Casella and McCulloch 1992, Variance Components, 3.6). The
 * interval within is the exact chi-square one; of the share it is that of Thomas and Hultquist (1978, Annals of
 * Statistics 6, 582–587), which takes the variance of the unweighted group means with their harmonic mean size, and
 * between groups Williams' (1962, Biometrika 49, 278–281) with the same mean square; as in Burdick and Graybill 1992,
 * Confidence Intervals on Variance Components, chapters 3 and 4. All from memory.
 *
 * @param groups values of each group; two groups or more, and one of them with two values or more
 * @throws {RangeError} for fewer, an empty group, or values that do not vary within any group
 */
export function varianceSplit(groups: readonly (readonly number[])[], level = 0.95): VarianceSplit {
  const sizes = groups.map((group) => group.length);
  const values = sizes.reduce((sum, size) => sum + size, 0);
  const count = groups.length;
  if (count < 2 || values <= count || sizes.includes(0)) {
    throw new RangeError(`varianceSplit requires two groups and more values than groups; got ${sizes.join(", ")}`);
  }
  const means = groups.map(mean);
  const whole = mean(groups.flat());
  const squares = (list: readonly number[], centre: number): number =>
    list.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  const squaresWithin = groups.reduce((sum, group, at) => sum + squares(group, means[at] as number), 0);
  const squaresBetween = means.reduce((sum, own, at) => sum + (sizes[at] as number) * (own - whole) ** 2, 0);
  const [ofBetween, ofWithin] = [count - 1, values - count];
  const meanSquareBetween = squaresBetween / ofBetween;
  const meanSquareWithin = squaresWithin / ofWithin;
  if (!(meanSquareWithin > 0)) throw new RangeError("varianceSplit requires values that vary within a group");

  const usualSize = (values - sizes.reduce((sum, size) => sum + size * size, 0) / values) / ofBetween;
  const variance = Math.max(0, (meanSquareBetween - meanSquareWithin) / usualSize);
  const harmonic = count / sizes.reduce((sum, size) => sum + 1 / size, 0);
  const unweighted = (harmonic * squares(means, mean(means))) / ofBetween;

  const tail = (1 - level) / 2;
  const [fLow, fHigh] = [fQuantile(tail, ofBetween, ofWithin), fQuantile(1 - tail, ofBetween, ofWithin)];
  const [chiLow, chiHigh] = [chiSquareQuantile(tail, ofBetween), chiSquareQuantile(1 - tail, ofBetween)];
  const ratio = (quantile: number): number => Math.max(0, (unweighted / (meanSquareWithin * quantile) - 1) / harmonic);
  const share = (of: number): number => of / (1 + of);
  const root = (square: number): number => Math.sqrt(Math.max(0, square));
  const betweenAt = (f: number, chi: number): number =>
    root((ofBetween * (unweighted - f * meanSquareWithin)) / (harmonic * chi));
  const f = meanSquareBetween / meanSquareWithin;
  const estimate = variance / (variance + meanSquareWithin);
  // The two estimates of what lies between weigh groups differently; an interval always holds its own.
  const holding = (own: number, low: number, high: number): Interval => ({
    estimate: own,
    low: Math.min(own, low),
    high: Math.max(own, high),
  });
  return {
    groups: count,
    values,
    meanSquareBetween,
    meanSquareWithin,
    f,
    p: fUpperTail(f, ofBetween, ofWithin),
    rSquared: squaresBetween / (squaresBetween + squaresWithin),
    between: holding(root(variance), betweenAt(fHigh, chiHigh), betweenAt(fLow, chiLow)),
    within: {
      estimate: root(meanSquareWithin),
      low: root(squaresWithin / chiSquareQuantile(1 - tail, ofWithin)),
      high: root(squaresWithin / chiSquareQuantile(tail, ofWithin)),
    },
    shareBetween: holding(estimate, share(ratio(fHigh)), share(ratio(fLow))),
  };
}
