import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";
import { holmAdjusted } from "../../src/analysis/holmAdjusted.ts";
import { limitsOfAgreement } from "../../src/analysis/limitsOfAgreement.ts";
import { linearCombination } from "../../src/analysis/predict.ts";
import { fitRandomSlopes } from "../../src/analysis/randomSlopes.ts";
import { ratioInterval } from "../../src/analysis/ratioInterval.ts";
import { kernelsToSeeLength, kernelsToSeeShares } from "../../src/malting/germination/countSize.ts";

const read = (name: string): string => readFileSync(new URL(`reference/${name}.json`, import.meta.url), "utf8");

interface Floor {
  readonly orange: {
    readonly tree: readonly string[];
    readonly age: readonly number[];
    readonly circumference: readonly number[];
    readonly coefficients: readonly number[];
    readonly covariance: readonly number[];
    readonly slopeVariance: number;
    readonly varianceFactor: number;
  };
  readonly holm: { readonly cases: readonly { readonly p: readonly number[]; readonly adjusted: readonly number[] }[] };
  readonly kernels: {
    readonly shares: readonly {
      readonly from: number;
      readonly to: number;
      readonly power: number;
      readonly n: number;
    }[];
    readonly lengths: readonly {
      readonly difference: number;
      readonly spread: number;
      readonly power: number;
      readonly n: number;
    }[];
  };
  readonly inverse: {
    readonly speed: readonly number[];
    readonly distance: readonly number[];
    readonly at: number;
    readonly estimate: number;
    readonly low: number;
    readonly high: number;
  };
}

// R 4.2.2, made by reference/floor.R.
const floor: Floor = JSON.parse(read("floor"));

describe("fitRandomSlopes", () => {
  test("agrees with the restricted likelihood written out in whole matrices: orange trees, in R", () => {
    const { tree, age, circumference, coefficients, covariance, slopeVariance, varianceFactor } = floor.orange;
    const fit = fitRandomSlopes(
      age.map((days, at) => {
        const along = days / 100;
        const response = circumference[at] as number;
        return { group: tree[at] as string, along, predictors: [1, along], response, variance: 1 + along / 4 };
      }),
    );
    // R's optimiser stops within about 1e-8 of the ratio's logarithm.
    expect(fit?.slopeVariance).toAgreeWithin(slopeVariance, 1e-6);
    expect(fit?.varianceFactor).toAgreeWithin(varianceFactor, 1e-7);
    for (const [at, value] of coefficients.entries()) expect(fit?.coefficients[at]).toAgreeWithin(value, 1e-8);
    for (const [at, value] of covariance.entries()) expect(fit?.covariance[at]).toAgreeWithin(value, 1e-6);
  });

  test("gives the components of variance that follow from NIST's certified analysis of SiRstv", () => {
    const { group, y, certified } = JSON.parse(read("SiRstv"));
    const fit = fitRandomSlopes(
      (y as number[]).map((response, at) => {
        return { group: String(group[at]), along: 1, predictors: [1], response, variance: 1 };
      }),
    );
    // In groups of one size restricted likelihood and the analysis of variance agree: (MS between − MS within)/5.
    expect(fit?.varianceFactor).toAgreeWithin(certified.within.ms, 1e-6);
    expect(fit?.slopeVariance).toAgreeWithin((certified.between.ms - certified.within.ms) / 5, 1e-5);
    expect(fit?.covariance[0]).toAgreeWithin(certified.between.ms / 25, 1e-6);
  });
});

test.each(floor.holm.cases)("holmAdjusted($p) agrees with R", ({ p, adjusted }) => {
  for (const [at, value] of holmAdjusted(p).entries()) expect(value).toLieWithin(adjusted[at] as number, 1e-14);
});

test.each(floor.kernels.shares)(
  "kernelsToSeeShares($from, $to) at power $power agrees with R",
  ({ from, to, power, n }) => {
    expect(kernelsToSeeShares(from, to, { power })).toBe(Math.ceil(n));
  },
);

test("kernelsToSeeShares(0.5, 0.75) at power 0.9 is the 76.7 that R's own help page prints, rounded up", () => {
  // Examples of power.prop.test (from memory).
  expect(kernelsToSeeShares(0.5, 0.75, { power: 0.9 })).toBe(Math.ceil(76.7));
});

test.each(floor.kernels.lengths)(
  "kernelsToSeeLength($difference, $spread) at power $power comes within a kernel of R, which has no closed form",
  ({ difference, spread, power, n }) => {
    expect(kernelsToSeeLength(difference, spread, { power })).toLieWithin(n, 1);
  },
);

test("ratioInterval inverts a fitted line as its 95 % limits do: stopping distances, in R", () => {
  const { speed, distance, at, estimate, low, high } = floor.inverse;
  const fit = fitLeastSquares([{ name: "speed", values: speed }], distance);
  const intercept = linearCombination(fit, [1, 0]);
  const slope = linearCombination(fit, [0, 1]);
  const both = linearCombination(fit, [1, 1]);
  const covariance = (both.standardError ** 2 - intercept.standardError ** 2 - slope.standardError ** 2) / 2;
  const found = ratioInterval(
    {
      numerator: at - intercept.estimate,
      denominator: slope.estimate,
      numeratorVariance: intercept.standardError ** 2,
      denominatorVariance: slope.standardError ** 2,
      covariance: -covariance,
    },
    fit.degreesOfFreedom,
  );
  expect(found?.estimate).toAgreeWithin(estimate, 1e-12);
  expect(found?.low).toAgreeWithin(low, 1e-9);
  expect(found?.high).toAgreeWithin(high, 1e-9);
});

/** Peak expiratory flow by two meters, l/min: Bland and Altman 1986, Lancet i 307–310, table (data and results from memory). */
test("limitsOfAgreement gives the mean, spread and interval of Bland and Altman's two peak-flow meters", () => {
  const large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
  const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
  const { bias, standardDeviation, limits, pairs } = limitsOfAgreement(
    large.map((flow, at) => flow - (mini[at] as number)),
  );
  expect(pairs).toBe(17);
  expect(bias.estimate).toLieWithin(-2.1, 0.05);
  expect(standardDeviation).toLieWithin(38.8, 0.05);
  expect(bias.low).toLieWithin(-22.1, 0.1);
  expect(bias.high).toLieWithin(17.8, 0.1);
  // The paper takes 2 for 1.96 and so prints −79.7 and 75.5.
  expect((limits[0] - bias.estimate) * (2 / 1.959964)).toLieWithin(-79.7 + 2.1, 0.15);
  expect((limits[1] - bias.estimate) * (2 / 1.959964)).toLieWithin(75.5 + 2.1, 0.15);
});
