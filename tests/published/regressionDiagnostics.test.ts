import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";
import { linearCombination, predict } from "../../src/analysis/predict.ts";

/** What R 4.2.2 gives for lm() and the usual packages on two of its own data sets; see reference/README.md. */
interface ReferenceFit {
  readonly terms: readonly string[];
  readonly X: readonly (readonly number[])[];
  readonly y: readonly number[];
  readonly coef: readonly number[];
  readonly se: readonly number[];
  readonly t: readonly number[];
  readonly pValue: readonly number[];
  readonly ci95: readonly (readonly [number, number])[];
  readonly r2: number;
  readonly adjR2: number;
  readonly sigma: number;
  readonly F: number;
  readonly Fdf1: number;
  readonly Fdf2: number;
  readonly Fp: number;
  readonly newX: Readonly<Record<string, number>>;
  readonly predFit: number;
  readonly predLower95: number;
  readonly predUpper95: number;
  readonly meanLower95: number;
  readonly meanUpper95: number;
  readonly seFit: number;
  readonly fitted: readonly number[];
  readonly residuals: readonly number[];
  readonly hat: readonly number[];
  readonly rstudent: readonly number[];
  readonly cooks: readonly number[];
  readonly press: number;
  readonly vif: Readonly<Record<string, number>>;
  readonly hc3: readonly number[];
  readonly bpKoenker: number;
  readonly bpKoenkerP: number;
  readonly dw: number;
  readonly lag1: number;
}

function readFit(name: string): ReferenceFit {
  return JSON.parse(readFileSync(new URL(`reference/lm_${name}.json`, import.meta.url), "utf8"));
}

/** The file prints 15 significant digits; sums over the rows lose up to four of them. */
const close = 1e-11;

describe.each(["stackloss", "mtcars"])("fitLeastSquares agrees with R's lm on %s", (name) => {
  const reference = readFit(name);
  const predictors = reference.terms.slice(1);
  const columns = predictors.map((label, at) => ({
    name: label,
    values: reference.X.map((row) => row[at + 1] as number),
  }));
  const fit = fitLeastSquares(columns, reference.y);
  const observations = reference.y.length;

  test("coefficients, errors, t, p and intervals", () => {
    expect(fit.terms.map((term) => term.name)).toEqual(["intercept", ...predictors]);
    reference.coef.forEach((estimate, at) => {
      const term = fit.terms[at];
      expect(term?.estimate).toAgreeWithin(estimate, close);
      expect(term?.standardError).toAgreeWithin(reference.se[at] as number, close);
      expect(term?.t).toAgreeWithin(reference.t[at] as number, close);
      expect(term?.p).toAgreeWithin(reference.pValue[at] as number, 1e-10);
      expect(term?.low).toAgreeWithin(reference.ci95[at]?.[0] as number, close);
      expect(term?.high).toAgreeWithin(reference.ci95[at]?.[1] as number, close);
    });
  });

  test("R², adjusted R², residual standard deviation and F", () => {
    expect(fit.observations).toBe(observations);
    expect(fit.degreesOfFreedom).toBe(reference.Fdf2);
    expect(fit.fDegreesOfFreedom).toEqual([reference.Fdf1, reference.Fdf2]);
    expect(fit.rSquared).toAgreeWithin(reference.r2, close);
    expect(fit.adjustedRSquared).toAgreeWithin(reference.adjR2, close);
    expect(fit.residualStandardDeviation).toAgreeWithin(reference.sigma, close);
    expect(fit.f).toAgreeWithin(reference.F, close);
    expect(fit.fPValue).toAgreeWithin(reference.Fp, 1e-10);
  });

  test("fitted values, residuals, leverage, studentised residuals and Cook's distance", () => {
    expect(fit.fitted).toHaveLength(observations);
    for (let row = 0; row < observations; row += 1) {
      expect(fit.fitted[row]).toAgreeWithin(reference.fitted[row] as number, close);
      // Residuals are small differences of fitted values some hundred times their size.
      expect(fit.residuals[row]).toLieWithin(reference.residuals[row] as number, 1e-11);
      expect(fit.leverage[row]).toAgreeWithin(reference.hat[row] as number, close);
      expect(fit.studentisedResiduals[row]).toLieWithin(reference.rstudent[row] as number, 1e-11);
      expect(fit.cooksDistance[row]).toLieWithin(reference.cooks[row] as number, 1e-11);
    }
  });

  test("leave-one-out error, variance inflation and HC3 errors", () => {
    expect(fit.leaveOneOutRootMeanSquare).toAgreeWithin(Math.sqrt(reference.press / observations), close);
    predictors.forEach((label, at) => {
      expect(fit.terms[at + 1]?.varianceInflation).toAgreeWithin(reference.vif[label] as number, close);
    });
    reference.hc3.forEach((error, at) => {
      expect(fit.terms[at]?.robustStandardError).toAgreeWithin(error, close);
    });
  });

  test("Durbin–Watson, Breusch–Pagan in Koenker's form, lag-1 autocorrelation", () => {
    expect(fit.durbinWatson).toAgreeWithin(reference.dw, close);
    expect(fit.breuschPagan.statistic).toAgreeWithin(reference.bpKoenker, close);
    expect(fit.breuschPagan.degreesOfFreedom).toBe(predictors.length);
    expect(fit.breuschPagan.p).toAgreeWithin(reference.bpKoenkerP, close);
    expect(fit.lagOneAutocorrelation.estimate).toAgreeWithin(reference.lag1, 1e-9);
  });

  test("interval of the mean and of the next observation at a new point", () => {
    const point = predictors.map((label) => reference.newX[label] as number);
    const prediction = predict(fit, point);
    expect(prediction.estimate).toAgreeWithin(reference.predFit, close);
    expect(prediction.meanStandardError).toAgreeWithin(reference.seFit, close);
    expect(prediction.low).toAgreeWithin(reference.predLower95, close);
    expect(prediction.high).toAgreeWithin(reference.predUpper95, close);
    const average = linearCombination(fit, [1, ...point]);
    expect(average.standardError).toAgreeWithin(reference.seFit, close);
    expect(average.low).toAgreeWithin(reference.meanLower95, close);
    expect(average.high).toAgreeWithin(reference.meanUpper95, close);
  });
});

/** NIST/SEMATECH e-Handbook 4.4.4, pressure on temperature: NIST's data; the intervals were computed with R's lm. */
describe("predict(fit, x, level) gives the pressure/temperature intervals", () => {
  const read = (name: string) => JSON.parse(readFileSync(new URL(`reference/${name}.json`, import.meta.url), "utf8"));
  const data: { temp: number[]; pressure: number[] } = read("handbook_pressure_temperature");
  const expected: {
    t975: number;
    DW: number;
    at: Record<string, { fit: number; seFit: number; ci95: number[]; pi95: number[]; pi99: number[] }>;
  } = read("handbook").pressure_temperature_4;
  const fit = fitLeastSquares([{ name: "temperature", values: data.temp }], data.pressure);
  /** The file gives ten significant digits. */
  const printed = 2e-9;

  test.each(["25", "47", "65"])("at %s degrees", (celsius) => {
    const want = expected.at[celsius];
    if (!want) throw new Error(`no reference at ${celsius}`);
    const temperature = Number(celsius);
    const usual = predict(fit, [temperature], 0.95);
    const wide = predict(fit, [temperature], 0.99);
    const average = linearCombination(fit, [1, temperature], 0.95);
    expect(usual.estimate).toAgreeWithin(want.fit, printed);
    expect(usual.meanStandardError).toAgreeWithin(want.seFit, printed);
    expect(average.low).toAgreeWithin(want.ci95[0] as number, printed);
    expect(average.high).toAgreeWithin(want.ci95[1] as number, printed);
    expect(usual.low).toAgreeWithin(want.pi95[0] as number, printed);
    expect(usual.high).toAgreeWithin(want.pi95[1] as number, printed);
    expect(wide.low).toAgreeWithin(want.pi99[0] as number, printed);
    expect(wide.high).toAgreeWithin(want.pi99[1] as number, printed);
  });

  test("Durbin–Watson 1.663561511", () => {
    expect(fit.durbinWatson).toAgreeWithin(expected.DW, printed);
  });
});
