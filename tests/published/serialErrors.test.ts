import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { comparePaired, meanWithSerialError } from "../../src/analysis/comparePaired.ts";
import { factorise } from "../../src/analysis/factorisation.ts";
import { isFitFault } from "../../src/analysis/fitFault.ts";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";
import { neweyWest } from "../../src/analysis/neweyWest.ts";

function read<Content>(name: string): Content {
  return JSON.parse(readFileSync(new URL(`reference/${name}.json`, import.meta.url), "utf8"));
}

interface FurtherReference {
  readonly investment: Readonly<Record<string, readonly number[]>>;
  readonly longRunMean: Readonly<Record<string, number>>;
  readonly sleep: {
    readonly first: readonly number[];
    readonly second: readonly number[];
    readonly estimate: number;
    readonly low: number;
    readonly high: number;
    readonly p: number;
    readonly standardError: number;
  };
}

/** R 4.2.2 and sandwich 3.0.2, made by reference/r_further.R. */
const reference = read<FurtherReference>("r_further");
const series = (key: string): readonly number[] => reference.investment[key] as readonly number[];

/** Newey–West errors of realInvestment on realGnp and realInterest, US 1964 to 1982. */
function investmentErrors(lags: number): Float64Array {
  const columns = ["realGnp", "realInterest"].map((name) => ({ name, values: series(name) }));
  const factorisation = factorise(columns, true);
  if (isFitFault(factorisation)) throw new Error("the reference data can be fitted");
  const fit = fitLeastSquares(columns, series("realInvestment"));
  return neweyWest(factorisation.influence, fit.residuals, 3, lags);
}

test.each([0, 1, 2, 3, 4])(
  "neweyWest(…, %i lags) agrees with R's sandwich, adjusted for degrees of freedom",
  (lags) => {
    const errors = investmentErrors(lags);
    series(`neweyWestLag${lags}Adjusted`).forEach((error, term) => {
      expect(errors[term]).toAgreeWithin(error, 1e-10);
    });
  },
);

test("neweyWest agrees with the covariance printed in the documentation of sandwich, lag 4", () => {
  // Diagonal printed there without the adjustment: 359.4170681, 0.0002805888, 11.171472998. Ours carries n/(n − p) = 19/16.
  const printed = [359.4170681, 0.0002805888, 11.171472998];
  const errors = investmentErrors(4);
  printed.forEach((variance, term) => {
    expect(errors[term]).toAgreeWithin(Math.sqrt((variance * 19) / 16), 1e-7);
  });
});

test("neweyWest with 0 lags is HC1", () => {
  // R's vcovHC(type = "HC1") on stackloss; reference/README.md.
  const { X, y, hc1 } = read<{ X: number[][]; y: number[]; hc1: number[] }>("lm_stackloss");
  const columns = [1, 2, 3].map((at) => ({ name: `x${at}`, values: X.map((row) => row[at] as number) }));
  const factorisation = factorise(columns, true);
  if (isFitFault(factorisation)) throw new Error("the reference data can be fitted");
  const errors = neweyWest(factorisation.influence, fitLeastSquares(columns, y).residuals, 4, 0);
  hc1.forEach((error, term) => {
    expect(errors[term]).toAgreeWithin(error, 1e-11);
  });
});

test.each([0, 3, 4, 7])(
  "meanWithSerialError(Lew, %i lags) has R's Newey–West error under the small-sample factor",
  (lags) => {
    const { y } = read<{ y: number[] }>("Lew");
    const { standardError } = meanWithSerialError(y, { lags });
    const count = y.length;
    const ahead = lags + 1;
    // Harvey, Leybourne and Newbold (1997), equation 8, from memory: (n + 1 − 2h + h(h − 1)/n) / n.
    const factor = (count + 1 - 2 * ahead + (ahead * (ahead - 1)) / count) / count;
    expect(standardError * Math.sqrt(factor)).toAgreeWithin(reference.longRunMean[`lag${lags}`] as number, 1e-10);
  },
);

test("comparePaired without lags is the paired t test of the squared errors", () => {
  const { first, second, ...expected } = reference.sleep;
  // Student's sleep data may be below 0; a constant on both sides makes squares of them and leaves their differences.
  const errors = [first, second].map((gains) => gains.map((gain) => Math.sqrt(gain + 10)));
  const compared = comparePaired(errors[0] as number[], errors[1] as number[], { lags: 0 });
  expect(compared?.estimate).toAgreeWithin(expected.estimate, 1e-12);
  expect(compared?.standardError).toAgreeWithin(expected.standardError, 1e-12);
  expect(compared?.low).toAgreeWithin(expected.low, 1e-12);
  expect(compared?.high).toAgreeWithin(expected.high, 1e-12);
  expect(compared?.p).toAgreeWithin(expected.p, 1e-11);
});
