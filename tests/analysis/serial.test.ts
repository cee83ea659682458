import { describe, expect, test } from "vitest";
import { breuschPagan } from "../../src/analysis/breuschPagan.ts";
import { comparePaired } from "../../src/analysis/comparePaired.ts";
import { durbinWatson } from "../../src/analysis/durbinWatson.ts";
import { lagOneAutocorrelation } from "../../src/analysis/lagOneAutocorrelation.ts";
import { automaticLags, longRunSumVariance } from "../../src/analysis/neweyWest.ts";
import { seededRandom } from "../../src/analysis/seededRandom.ts";
import { gaussian } from "./gaussian.ts";

describe("lagOneAutocorrelation(values, level)", () => {
  test("its 95 per cent interval leaves out 0 for about 5 per cent of unrelated series", () => {
    const excluded = Array.from({ length: 1000 }, (_, at) => {
      const { low, high } = lagOneAutocorrelation(gaussian(seededRandom(at), 60));
      return low > 0 || high < 0;
    }).filter(Boolean).length;
    // The bias of −1/n costs a little; 3 to 7 per cent is four binomial standard errors and that bias.
    expect(excluded / 1000).toLieWithin(0.05, 0.028);
  });

  test("stays within −1 and 1, and knows nothing of values that do not vary", () => {
    const climbing = lagOneAutocorrelation([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(climbing.high).toBeLessThanOrEqual(1);
    expect(lagOneAutocorrelation([1, -1, 1, -1, 1, -1]).low).toBe(-1);
    expect(lagOneAutocorrelation([4, 4, 4])).toEqual({ estimate: 0, low: -1, high: 1 });
    expect(() => lagOneAutocorrelation([1, 2])).toThrow(
      new RangeError("lagOneAutocorrelation requires at least three values; got 2"),
    );
  });
});

describe("durbinWatson(residuals)", () => {
  test("is near 0 for a slow wave, near 4 for alternation, 2 for all zeros", () => {
    expect(durbinWatson(Array.from({ length: 200 }, (_, at) => Math.sin(at / 20)))).toBeLessThan(0.01);
    expect(durbinWatson([1, -1, 1, -1])).toBe(3);
    expect(durbinWatson([0, 0, 0])).toBe(2);
    expect(() => durbinWatson([1])).toThrow(new RangeError("durbinWatson requires at least two residuals; got 1"));
  });
});

describe("breuschPagan(columns, residuals)", () => {
  const x = Array.from({ length: 200 }, (_, at) => at);
  const noise = gaussian(seededRandom(3), 200);

  test("sees a spread that grows with the predictor, and none where it does not", () => {
    expect(
      breuschPagan(
        [{ name: "x", values: x }],
        noise.map((value, at) => value * at),
      ).p,
    ).toBeLessThan(1e-6);
    expect(breuschPagan([{ name: "x", values: x }], noise).p).toBeGreaterThan(0.01);
  });

  test("takes a predictor that does not vary as the constant", () => {
    const columns = [
      { name: "one", values: x.map(() => 1) },
      { name: "x", values: x },
    ];
    const alone = breuschPagan([{ name: "x", values: x }], noise);
    const beside = breuschPagan(columns, noise);
    expect(beside.degreesOfFreedom).toBe(1);
    expect(beside.statistic).toAgreeWithin(alone.statistic, 1e-9);
  });
});

describe("automaticLags(count) and longRunSumVariance(series, lags)", () => {
  test("four lags at 100 values, and never as many as there are", () => {
    // ⌊4 (n/100)^(2/9)⌋: 4 at 100 by definition, 6 at 1,000 (4 × 1.668), 7 at 2,000 (4 × 1.946).
    expect([100, 1000, 2000].map(automaticLags)).toEqual([4, 6, 7]);
    expect([1, 2, 3].map(automaticLags)).toEqual([0, 1, 1]);
    expect(() => automaticLags(0)).toThrow(RangeError);
  });

  test("sums by hand: 1 + 4 + 9 + 2 × ½ × (2 + 6) with one lag", () => {
    expect(longRunSumVariance([1, 2, 3], 0)).toBe(14);
    expect(longRunSumVariance([1, 2, 3], 1)).toBe(22);
    expect(() => longRunSumVariance([1], -1)).toThrow(RangeError);
  });
});

describe("comparePaired(a, b)", () => {
  test("a smaller error throughout lies below 0, and exchanging the two mirrors it", () => {
    const small = gaussian(seededRandom(1), 150);
    const large = gaussian(seededRandom(2), 150).map((value) => 1.6 * value);
    const compared = comparePaired(small, large);
    const exchanged = comparePaired(large, small);
    expect(compared?.high).toBeLessThan(0);
    expect(exchanged?.low).toAgreeWithin(-(compared?.high as number), 1e-12);
    expect(compared?.lags).toBe(4);
  });

  test("names a better one of two alike in about 5 of 100", () => {
    const named = Array.from({ length: 400 }, (_, at) => {
      const compared = comparePaired(gaussian(seededRandom(2 * at), 80), gaussian(seededRandom(2 * at + 1), 80));
      return compared !== null && (compared.low > 0 || compared.high < 0);
    }).filter(Boolean).length;
    // The robust error is a little short in samples of 80: nominal 5, and four binomial standard errors (1.1) above it.
    expect(named / 400).toBeLessThan(0.095);
  });

  test("says nothing of fewer than five pairs, and 0 of two alike", () => {
    expect(comparePaired([1, 2, 3, 4], [1, 2, 3, 5])).toBeNull();
    expect(comparePaired([1, 2, 3, 4, 5], [1, 2, 3, 4, 5])).toMatchObject({ estimate: 0, low: 0, high: 0, p: 1 });
  });

  test("refuses lists of unequal length and errors that are not finite", () => {
    expect(() => comparePaired([1], [1, 2])).toThrow(new RangeError("comparePaired requires pairs; got 1 and 2"));
    expect(() => comparePaired([1, Number.NaN], [1, 2])).toThrow(
      new RangeError("comparePaired requires finite errors; got another at 1"),
    );
  });
});
