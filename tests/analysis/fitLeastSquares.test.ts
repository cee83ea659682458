import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";
import type { RegressionFit } from "../../src/analysis/regressionFit.ts";

/** Twelve to forty rows of two predictors and a response, of the sizes that kilns have. */
const rows = fc.array(
  fc.record({
    humidity: fc.double({ min: 30, max: 100, noNaN: true }),
    depth: fc.double({ min: 0.08, max: 0.3, noNaN: true }),
    hours: fc.double({ min: 6, max: 30, noNaN: true }),
  }),
  { minLength: 12, maxLength: 40 },
);
type Row = { readonly humidity: number; readonly depth: number; readonly hours: number };

function fitRows(data: readonly Row[], change: (row: Row) => Row = (row) => row): RegressionFit {
  const changed = data.map(change);
  return fitLeastSquares(
    [
      { name: "humidity", values: changed.map((row) => row.humidity) },
      { name: "depth", values: changed.map((row) => row.depth) },
    ],
    changed.map((row) => row.hours),
  );
}

const estimates = (fit: RegressionFit): number[] => fit.terms.map((term) => term.estimate);

/** Data that carry a fit, and not one that hangs on a hair: there the last digits are nobody's. */
function isSound(data: readonly Row[]): boolean {
  try {
    const fit = fitRows(data);
    return fit.terms.every((term) => (term.varianceInflation ?? 1) < 100) && Math.max(...fit.leverage) < 0.999;
  } catch {
    return false;
  }
}

const soundRows = rows.filter(isSound);

describe("fitLeastSquares(columns, response)", () => {
  test("recovers an exact plane", () => {
    const data = Array.from({ length: 12 }, (_, at) => {
      const humidity = 50 + ((at * 7) % 12);
      const depth = 0.1 + 0.01 * ((at * at) % 11);
      return { humidity, depth, hours: 2 + 0.08 * humidity + 40 * depth };
    });
    const fit = fitRows(data);
    [2, 0.08, 40].forEach((truth, term) => {
      expect(fit.terms[term]?.estimate).toAgreeWithin(truth, 1e-11);
    });
    expect(fit.residualStandardDeviation).toLieWithin(0, 1e-12);
    expect(fit.rSquared).toAgreeWithin(1, 1e-14);
  });

  test("leaves no NaN where the residuals are exactly 0", () => {
    const fit = fitLeastSquares([{ name: "x", values: [1, 2, 3, 4, 5] }], [2, 4, 6, 8, 10], { intercept: false });
    expect(fit.residuals).toEqual(new Float64Array(5));
    expect(fit.fPValue).toBe(0);
    expect(fit.terms[0]?.p).toBe(0);
    expect(fit.studentisedResiduals).toEqual(new Float64Array(5));
    expect(fit.cooksDistance).toEqual(new Float64Array(5));
    expect([fit.durbinWatson, fit.breuschPagan.p]).toEqual([2, 1]);
  });

  test("shifting the response shifts the intercept and nothing else", () => {
    fc.assert(
      fc.property(soundRows, fc.double({ min: -100, max: 100, noNaN: true }), (data, shift) => {
        const before = fitRows(data);
        const after = fitRows(data, (row) => ({ ...row, hours: row.hours + shift }));
        const scale = 1e-9 * (before.terms[0]?.standardError as number) + 1e-9;
        expect(after.terms[0]?.estimate).toLieWithin((before.terms[0]?.estimate as number) + shift, scale);
        for (const term of [1, 2]) {
          const was = before.terms[term];
          expect(after.terms[term]?.estimate).toLieWithin(
            was?.estimate as number,
            1e-9 * (was?.standardError as number),
          );
          expect(after.terms[term]?.standardError).toAgreeWithin(was?.standardError as number, 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("measuring a predictor in another unit scales its coefficient and leaves t, VIF and every residual", () => {
    fc.assert(
      fc.property(soundRows, fc.constantFrom(100, 1 / 0.0254, 1e-6, 1e6), (data, factor) => {
        const before = fitRows(data);
        const after = fitRows(data, (row) => ({ ...row, depth: row.depth * factor }));
        const [was, is] = [before.terms[2], after.terms[2]];
        expect((is?.estimate as number) * factor).toLieWithin(
          was?.estimate as number,
          1e-9 * (was?.standardError as number),
        );
        expect((is?.robustStandardError as number) * factor).toAgreeWithin(was?.robustStandardError as number, 1e-9);
        expect(is?.varianceInflation).toAgreeWithin(was?.varianceInflation as number, 1e-9);
        after.residuals.forEach((residual, row) => {
          expect(residual).toLieWithin(before.residuals[row] as number, 1e-10);
        });
      }),
      { numRuns: 60 },
    );
  });

  test("the order of the rows changes no coefficient, though it changes Durbin–Watson", () => {
    fc.assert(
      fc.property(soundRows, (data) => {
        const before = fitRows(data);
        const after = fitRows(data.toReversed());
        estimates(after).forEach((estimate, term) => {
          const was = before.terms[term];
          expect(estimate).toLieWithin(was?.estimate as number, 1e-9 * (was?.standardError as number));
          expect(after.terms[term]?.robustStandardError).toAgreeWithin(was?.robustStandardError as number, 1e-9);
        });
        expect(after.leaveOneOutRootMeanSquare).toAgreeWithin(before.leaveOneOutRootMeanSquare, 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test("leave-one-out error is that of refitting without each row", () => {
    fc.assert(
      fc.property(soundRows, (data) => {
        const fit = fitRows(data);
        const squares = data.map((row, at) => {
          const { terms } = fitRows(data.toSpliced(at, 1));
          const [intercept, humidity, depth] = terms.map((term) => term.estimate) as [number, number, number];
          return (row.hours - intercept - humidity * row.humidity - depth * row.depth) ** 2;
        });
        const direct = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / data.length);
        expect(fit.leaveOneOutRootMeanSquare).toAgreeWithin(direct, 1e-8);
      }),
      { numRuns: 20 },
    );
  });

  test("leverages add up to the number of coefficients", () => {
    fc.assert(
      fc.property(soundRows, (data) => {
        expect(fitRows(data).leverage.reduce((sum, value) => sum + value, 0)).toAgreeWithin(3, 1e-12);
      }),
      { numRuns: 60 },
    );
  });

  test("gives Newey–West errors only where the residuals' lag-1 interval excludes 0", () => {
    const x = Array.from({ length: 40 }, (_, at) => (at * 17) % 40);
    const slow = x.map((value, at) => value + 5 * Math.sin(at / 4));
    const quick = x.map((value, at) => value + ((at * 29) % 7));
    const related = fitLeastSquares([{ name: "x", values: x }], slow);
    const unrelated = fitLeastSquares([{ name: "x", values: x }], quick);
    expect(related.lagOneAutocorrelation.low).toBeGreaterThan(0);
    expect(related.terms.every((term) => (term.serialStandardError ?? 0) > 0)).toBe(true);
    expect(unrelated.lagOneAutocorrelation.low).toBeLessThan(0);
    expect(unrelated.lagOneAutocorrelation.high).toBeGreaterThan(0);
    expect(unrelated.terms.map((term) => term.serialStandardError)).toEqual([null, null]);
  });

  test("covariance holds the squared standard errors on its diagonal", () => {
    const x = [1, 2, 3, 4, 5, 7];
    const fit = fitLeastSquares([{ name: "x", values: x }], [2, 1, 4, 3, 6, 8]);
    expect(Math.sqrt(fit.covariance[0] as number)).toAgreeWithin(fit.terms[0]?.standardError as number, 1e-13);
    expect(Math.sqrt(fit.covariance[3] as number)).toAgreeWithin(fit.terms[1]?.standardError as number, 1e-13);
    expect(fit.covariance[1]).toBe(fit.covariance[2]);
  });
});
