import fc from "fast-check";
import { expect, test } from "vitest";
import { studentTQuantile } from "../../src/analysis/distributions.ts";
import { type EstimatedPair, ratioInterval } from "../../src/analysis/ratioInterval.ts";

/** Pairs with any correlation, the denominator clear of 0 or not. */
const pairs = fc
  .record({
    numerator: fc.double({ min: -10, max: 10, noNaN: true }),
    denominator: fc.double({ min: -10, max: 10, noNaN: true }),
    numeratorError: fc.double({ min: 0.01, max: 2, noNaN: true }),
    denominatorError: fc.double({ min: 0.01, max: 2, noNaN: true }),
    correlation: fc.double({ min: -0.99, max: 0.99, noNaN: true }),
  })
  .map(
    ({ numerator, denominator, numeratorError, denominatorError, correlation }): EstimatedPair => ({
      numerator,
      denominator,
      numeratorVariance: numeratorError ** 2,
      denominatorVariance: denominatorError ** 2,
      covariance: correlation * numeratorError * denominatorError,
    }),
  );

test("at both ends of ratioInterval(pair) numerator less ratio times denominator is just as far from 0 as t allows", () => {
  const quantile = studentTQuantile(0.975, 20);
  fc.assert(
    fc.property(pairs, (pair) => {
      const found = ratioInterval(pair, 20);
      fc.pre(found !== null && pair.denominator ** 2 > 1.1 * quantile ** 2 * pair.denominatorVariance);
      for (const ratio of [found?.low ?? Number.NaN, found?.high ?? Number.NaN]) {
        const away = pair.numerator - ratio * pair.denominator;
        const variance = pair.numeratorVariance - 2 * ratio * pair.covariance + ratio ** 2 * pair.denominatorVariance;
        expect(away ** 2).toAgreeWithin(quantile ** 2 * variance, 1e-6);
      }
      expect(found?.low).toBeLessThanOrEqual(found?.estimate ?? Number.NaN);
      expect(found?.high).toBeGreaterThanOrEqual(found?.estimate ?? Number.NaN);
    }),
  );
});

test("ratioInterval(pair) gives nothing where the denominator is not clear of 0, and else something", () => {
  const quantile = studentTQuantile(0.975, 8);
  fc.assert(
    fc.property(pairs, (pair) => {
      const clear = Math.abs(pair.denominator) > quantile * Math.sqrt(pair.denominatorVariance);
      expect(ratioInterval(pair, 8) !== null).toBe(clear);
    }),
  );
});

test("ratioInterval(pair) with a denominator that is known is the numerator's own interval, scaled", () => {
  const pair = { numerator: 6, denominator: 2, numeratorVariance: 0.25, denominatorVariance: 0, covariance: 0 };
  const found = ratioInterval(pair, 12);
  expect(found?.estimate).toBe(3);
  expect(found?.high).toAgreeWithin(3 + (studentTQuantile(0.975, 12) * 0.5) / 2, 1e-12);
});
