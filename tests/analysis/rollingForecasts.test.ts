import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";
import { predict } from "../../src/analysis/predict.ts";
import { rollingForecasts } from "../../src/analysis/rollingForecasts.ts";
import { rollingLastFew, rollingMean } from "../../src/analysis/rollingMeans.ts";
import { seededRandom } from "../../src/analysis/seededRandom.ts";
import { gaussian } from "./gaussian.ts";

/** Loads as a house might log them: humidity in per cent, depth in metres, hours with a spread of half an hour. */
function invented(count: number, seed: number) {
  const random = seededRandom(seed);
  const humidity = Array.from({ length: count }, () => 55 + 40 * random.uniform());
  const depth = Array.from({ length: count }, () => 0.12 + 0.06 * random.uniform());
  const noise = gaussian(random, count);
  const hours = humidity.map(
    (value, at) => 2 + 0.08 * value + 40 * (depth[at] as number) + 0.5 * (noise[at] as number),
  );
  const columns = [
    { name: "humidity", values: humidity },
    { name: "depth", values: depth },
  ];
  return { columns, hours };
}

const earlier = (columns: readonly { name: string; values: readonly number[] }[], at: number) =>
  columns.map(({ name, values }) => ({ name, values: values.slice(0, at) }));

describe("rollingForecasts(columns, response, minimumObservations, level)", () => {
  test("agrees with refitting by QR before each observation", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(20, 60), (seed, count) => {
        const { columns, hours } = invented(count, seed);
        const forecasts = rollingForecasts(columns, hours, 12, 0.9);
        expect(forecasts.map((forecast) => forecast !== null)).toEqual(hours.map((_, at) => at >= 12));
        forecasts.forEach((forecast, at) => {
          if (forecast === null) return;
          const point = columns.map(({ values }) => values[at] as number);
          const refitted = predict(fitLeastSquares(earlier(columns, at), hours.slice(0, at)), point, 0.9);
          for (const part of [
            "estimate",
            "low",
            "high",
            "meanStandardError",
            "predictionStandardError",
            "leverage",
          ] as const) {
            expect(forecast[part]).toAgreeWithin(refitted[part], 1e-9);
          }
        });
      }),
      { numRuns: 20 },
    );
  });

  test("still agrees after 2,000 observations", () => {
    const { columns, hours } = invented(2001, 5);
    const point = columns.map(({ values }) => values[2000] as number);
    const refitted = predict(fitLeastSquares(earlier(columns, 2000), hours.slice(0, 2000)), point, 0.9);
    const last = rollingForecasts(columns, hours, 12, 0.9)[2000];
    expect(last?.estimate).toAgreeWithin(refitted.estimate, 1e-12);
    expect(last?.low).toAgreeWithin(refitted.low, 1e-11);
    expect(last?.high).toAgreeWithin(refitted.high, 1e-11);
  });

  test("without an intercept, too", () => {
    const { columns, hours } = invented(30, 8);
    const point = columns.map(({ values }) => values[29] as number);
    const refitted = predict(
      fitLeastSquares(earlier(columns, 29), hours.slice(0, 29), { intercept: false }),
      point,
      0.9,
    );
    expect(rollingForecasts(columns, hours, 12, 0.9, { intercept: false })[29]?.low).toAgreeWithin(refitted.low, 1e-9);
  });

  test("knows nothing while a predictor has not varied, or follows from the other", () => {
    const { columns, hours } = invented(40, 3);
    const [humidity, depth] = columns.map(({ values }) => values) as [number[], number[]];
    const flat = [
      { name: "humidity", values: humidity },
      { name: "depth", values: depth.map((value, at) => (at < 20 ? 0.15 : value)) },
    ];
    const tied = [
      { name: "humidity", values: humidity },
      { name: "depth", values: depth.map((value, at) => (at < 20 ? 0.1 + (humidity[at] as number) / 1000 : value)) },
    ];
    for (const predictors of [flat, tied]) {
      const known = rollingForecasts(predictors, hours, 12, 0.9).map((forecast) => forecast !== null);
      // The 21st observation (at 20) is the first that tells the two apart, and the next is the first to be foretold.
      expect(known).toEqual(hours.map((_, at) => at > 20));
    }
  });

  test("needs one observation more than there are coefficients whatever the minimum says", () => {
    const { columns, hours } = invented(8, 4);
    expect(rollingForecasts(columns, hours, 0, 0.9).map((forecast) => forecast !== null)).toEqual(
      hours.map((_, at) => at >= 4),
    );
  });

  test("its 90 per cent intervals hold about 90 per cent of invented loads", () => {
    const { columns, hours } = invented(2000, 11);
    const forecasts = rollingForecasts(columns, hours, 12, 0.9);
    const judged = forecasts.filter((forecast) => forecast !== null).length;
    const held = forecasts.filter(
      (forecast, at) =>
        forecast !== null && forecast.low <= (hours[at] as number) && (hours[at] as number) <= forecast.high,
    ).length;
    // Four binomial standard errors: √(0.9 × 0.1 / 1988) = 0.0067.
    expect(held / judged).toLieWithin(0.9, 0.027);
  });

  test("refuses columns of another length, values that are not finite and a level that is no level", () => {
    const { columns, hours } = invented(20, 2);
    expect(() => rollingForecasts(columns, hours.slice(1), 12, 0.9)).toThrow(
      new RangeError("humidity requires one value an observation; got 20 for 19"),
    );
    expect(() => rollingForecasts(columns, hours.with(7, Number.NaN), 12, 0.9)).toThrow(
      new RangeError("rollingForecasts requires finite values; got another at 7"),
    );
    expect(() => rollingForecasts(columns, hours, 12, 90)).toThrow(
      new RangeError("rollingForecasts requires a level between 0 and 1; got 90"),
    );
  });
});

describe("rollingMean and rollingLastFew", () => {
  test("rollingMean(response, minimum) is the mean of all earlier values", () => {
    expect(rollingMean([4, 8, 6, 10], 1)).toEqual([null, 4, 6, 6]);
    expect(rollingMean([4, 8, 6, 10], 3)).toEqual([null, null, null, 6]);
  });

  test("rollingLastFew(response, count) is the mean of the last few", () => {
    expect(rollingLastFew([4, 8, 6, 10, 1], 2)).toEqual([null, null, 6, 7, 8]);
    expect(rollingLastFew([4], 5)).toEqual([null]);
    expect(rollingLastFew([], 5)).toEqual([]);
  });

  test("both refuse a count that is none", () => {
    expect(() => rollingMean([1], 0)).toThrow(
      new RangeError("rollingMean requires a positive whole number of values; got 0"),
    );
    expect(() => rollingLastFew([1], 1.5)).toThrow(RangeError);
  });
});
