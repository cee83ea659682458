import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";
import { fitRandomSlopes, type SlopeObservation } from "../../src/analysis/randomSlopes.ts";

const scattered = (seed: number): number => Math.sin(seed * 12.9898) * Math.sin(seed * 78.233);

function observations(groups: number, each: number, slopeSpread: number): SlopeObservation[] {
  return Array.from({ length: groups * each }, (_, at) => {
    const group = Math.floor(at / each);
    const along = 1 + (at % each);
    const response = 2 + (3 + slopeSpread * scattered(group + 1)) * along + 0.1 * scattered(100 + at);
    return { group: String(group), along, predictors: [1, along], response, variance: 1 };
  });
}

describe("fitRandomSlopes(observations)", () => {
  test("is plain least squares where every group has one observation, whatever the slopes' share", () => {
    const single = Array.from({ length: 15 }, (_, at) => {
      const response = 1 + 0.5 * at + scattered(at + 1);
      return { group: String(at), along: 1, predictors: [1, at], response, variance: 1 };
    });
    const fit = fitRandomSlopes(single);
    const plain = fitLeastSquares(
      [{ name: "x", values: single.map(({ predictors }) => predictors[1] as number) }],
      single.map(({ response }) => response),
    );
    for (const [at, { estimate, standardError }] of plain.terms.entries()) {
      expect(fit?.coefficients[at]).toAgreeWithin(estimate, 1e-9);
      expect(Math.sqrt(fit?.covariance[3 * at] ?? Number.NaN)).toAgreeWithin(standardError, 1e-6);
    }
  });

  test("keeps the errors apart: groups that differ widen the slope's interval, many observations in few groups do not narrow it", () => {
    const few = fitRandomSlopes(observations(6, 4, 0.5));
    const many = fitRandomSlopes(observations(6, 40, 0.5));
    const alike = fitRandomSlopes(observations(6, 40, 0));
    const error = (fit: typeof few): number => Math.sqrt(fit?.covariance[3] ?? Number.NaN);
    expect(error(many)).toAgreeWithin(error(few), 0.05);
    expect(error(alike)).toBeLessThan(error(many) / 50);
  });

  test("does not depend on the order of observations, nor on the unit of the variances given", () => {
    const all = observations(7, 5, 0.3);
    fc.assert(
      fc.property(
        fc.shuffledSubarray(all, { minLength: all.length }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (mixed, unit) => {
          const own = fitRandomSlopes(all);
          const other = fitRandomSlopes(mixed.map((row) => ({ ...row, variance: unit })));
          expect(other?.coefficients[1]).toAgreeWithin(own?.coefficients[1] ?? Number.NaN, 1e-7);
          expect(other?.slopeVariance).toAgreeWithin(own?.slopeVariance ?? Number.NaN, 1e-4);
          expect(other?.varianceFactor).toAgreeWithin((own?.varianceFactor ?? Number.NaN) / unit, 1e-4);
        },
      ),
      { numRuns: 25 },
    );
  });

  test("gives nothing where predictors follow from each other or observations are few", () => {
    const doubled = observations(5, 4, 0.2).map((row) => ({ ...row, predictors: [...row.predictors, 2 * row.along] }));
    expect(fitRandomSlopes(doubled)).toBeNull();
    expect(fitRandomSlopes(observations(1, 3, 0))).toBeNull();
    expect(fitRandomSlopes([])).toBeNull();
  });

  test("refuses a variance of 0 and rows of unequal width", () => {
    const [first, ...rest] = observations(3, 3, 0.1) as [SlopeObservation, ...SlopeObservation[]];
    expect(() => fitRandomSlopes([{ ...first, variance: 0 }, ...rest])).toThrow(/variances above 0; got 0/);
    expect(() => fitRandomSlopes([first, { ...first, predictors: [1] }, ...rest])).toThrow(
      /2 predictors throughout; got 1/,
    );
  });
});
