import { describe, expect, test } from "vitest";
import { addedVariable } from "../../src/analysis/addedVariable.ts";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";
import { linearCombination, predict } from "../../src/analysis/predict.ts";
import { mean } from "../../src/analysis/summary.ts";

const humidity = [55, 60, 71, 64, 80, 77, 58, 69, 73, 62, 66, 75];
const depth = [0.15, 0.16, 0.14, 0.15, 0.17, 0.18, 0.15, 0.16, 0.14, 0.17, 0.16, 0.15];
const hours = [12, 12.5, 13, 13, 15, 15.5, 12, 13.5, 13, 13.5, 13, 14];
const columns = [
  { name: "humidity", values: humidity },
  { name: "depth", values: depth },
];
const fit = fitLeastSquares(columns, hours);

describe("predict(fit, x, level) and linearCombination(fit, weights, level)", () => {
  test("at a logged point the estimate and leverage are those of the fit", () => {
    const prediction = predict(fit, [humidity[4] as number, depth[4] as number]);
    expect(prediction.estimate).toAgreeWithin(fit.fitted[4] as number, 1e-13);
    expect(prediction.leverage).toAgreeWithin(fit.leverage[4] as number, 1e-11);
  });

  test("a single weight gives that coefficient with its own interval, scaled", () => {
    const term = fit.terms[1];
    const perTenPoints = linearCombination(fit, [0, 10, 0]);
    expect(perTenPoints.estimate).toAgreeWithin(10 * (term?.estimate as number), 1e-13);
    expect(perTenPoints.standardError).toAgreeWithin(10 * (term?.standardError as number), 1e-12);
    expect(perTenPoints.low).toAgreeWithin(10 * (term?.low as number), 1e-11);
    expect(perTenPoints.high).toAgreeWithin(10 * (term?.high as number), 1e-12);
  });

  test("refuse another number of values, or a level that is none", () => {
    expect(() => predict(fit, [70])).toThrow(new RangeError("the fit has 3 terms; got values for 2"));
    expect(() => linearCombination(fit, [1, 2])).toThrow(new RangeError("the fit has 3 terms; got values for 2"));
    expect(() => predict(fit, [70, 0.15], 1)).toThrow(
      new RangeError("predict requires a level between 0 and 1; got 1"),
    );
  });
});

describe("addedVariable(columns, response, index)", () => {
  const plot = addedVariable(columns, hours, 1, { points: 21 });

  test("its points regress to the whole fit's coefficient, and leave its residuals", () => {
    // Frisch and Waugh (1933), Lovell (1963): from memory.
    const line = fitLeastSquares([{ name: "depth", values: plot.x }], plot.y);
    expect(line.terms[1]?.estimate).toAgreeWithin(fit.terms[2]?.estimate as number, 1e-11);
    line.residuals.forEach((residual, row) => {
      expect(residual).toLieWithin(fit.residuals[row] as number, 1e-12);
    });
  });

  test("both axes are about the means, in natural units", () => {
    expect(mean(plot.x)).toAgreeWithin(mean(depth), 1e-12);
    expect(mean(plot.y)).toAgreeWithin(mean(hours), 1e-12);
  });

  test("the line runs from the least to the greatest x and is the fit with humidity at its mean", () => {
    expect(plot.line).toHaveLength(21);
    expect(plot.line[0]?.x).toBe(Math.min(...plot.x));
    expect(plot.line[20]?.x).toBe(Math.max(...plot.x));
    for (const { x, y, low, high } of plot.line) {
      const there = linearCombination(fit, [1, mean(humidity), x]);
      expect(y).toAgreeWithin(there.estimate, 1e-12);
      expect(low).toAgreeWithin(there.low, 1e-11);
      expect(high).toAgreeWithin(there.high, 1e-11);
    }
  });

  test("with one predictor alone the points are the data", () => {
    const alone = addedVariable([{ name: "depth", values: depth }], hours, 0);
    expect(alone.x).toEqual(Float64Array.from(depth));
    expect(alone.y).toEqual(Float64Array.from(hours));
  });

  test("refuses an index without a column", () => {
    expect(() => addedVariable(columns, hours, 2)).toThrow(
      new RangeError("addedVariable requires a column from 0 to 1; got 2"),
    );
  });
});
