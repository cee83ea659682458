import { describe, expect, test } from "vitest";
import { findFitFault, whyNoFit } from "../../src/analysis/findFitFault.ts";
import { fitLeastSquares } from "../../src/analysis/fitLeastSquares.ts";

const humidity = [55, 60, 71, 64, 80, 77, 58, 69, 73, 62, 66, 75];
const depth = [0.15, 0.16, 0.14, 0.15, 0.17, 0.18, 0.15, 0.16, 0.14, 0.17, 0.16, 0.15];
const hours = [12, 12.5, 13, 13, 15, 15.5, 12, 13.5, 13, 13.5, 13, 14];
const loads = { observations: "loads", response: "kiln hours" };
const named = (name: string, label: string, values: readonly number[]) => ({ name, label, values });

const columnsWith = (depths: readonly number[]) => [
  named("humidity", "humidity", humidity),
  named("depth", "bed depth", depths),
];

describe("whyNoFit(columns, response, minimumObservations, words)", () => {
  test("is null where the data carry the fit", () => {
    expect(whyNoFit(columnsWith(depth), hours, 12, loads)).toBeNull();
  });

  test.each([
    ["no observations", [], [], "The estimate needs 12 loads with all that it uses; so far there are none."],
    ["one", [0.15], [12], "The estimate needs 12 loads with all that it uses; so far there is 1."],
    [
      "nine",
      depth.slice(0, 9),
      hours.slice(0, 9),
      "The estimate needs 12 loads with all that it uses; so far there are 9.",
    ],
    [
      "a predictor that does not vary",
      depth.map(() => 0.15),
      hours,
      "All 12 loads have the same bed depth, so its effect cannot be told.",
    ],
    [
      "one load alone with another depth",
      depth.map((_, at) => (at === 4 ? 0.2 : 0.15)),
      hours,
      "All but one of the 12 loads have the same bed depth, so its effect would rest on that one alone.",
    ],
    [
      "a predictor that follows from another",
      humidity.map((value) => 0.1 + value / 1000),
      hours,
      "The logged bed depth follows exactly from the other measures, so its own effect cannot be told.",
    ],
    [
      "hours that do not vary",
      depth,
      hours.map(() => 13),
      "All 12 loads have the same kiln hours, so there is nothing to explain.",
    ],
  ])("says so: %s", (_, depths, response, sentence) => {
    const columns = columnsWith(depths).map((column) => ({ ...column, values: column.values.slice(0, depths.length) }));
    expect(whyNoFit(columns, response, 12, loads)).toBe(sentence);
  });

  test("agrees with fitLeastSquares, which throws for the same data", () => {
    expect(() => fitLeastSquares(columnsWith(depth.map(() => 0.15)), hours)).toThrow(
      new RangeError("no fit: All 12 observations have the same bed depth, so its effect cannot be told."),
    );
    expect(() =>
      fitLeastSquares(
        columnsWith(depth),
        hours.map(() => 13),
      ),
    ).toThrow(RangeError);
    expect(() => fitLeastSquares([named("x", "x", [1, 2, 3])], [1, 2, 4])).toThrow(
      new RangeError("no fit: The estimate needs 4 observations with all that it uses; so far there are 3."),
    );
  });

  test("a depth logged with rounding noise about one value still counts as varying, in any unit", () => {
    const wobble = depth.map((_, at) => 0.15 + 1e-6 * ((at * 5) % 12));
    expect(findFitFault(columnsWith(wobble), hours)).toBeNull();
    expect(findFitFault(columnsWith(wobble.map((value) => value * 1e9)), hours)).toBeNull();
  });
});

describe("a caller's mistake throws what it got", () => {
  test.each([
    [
      "a value that is not finite",
      () => findFitFault(columnsWith([...depth.slice(1), Number.NaN]), hours),
      "depth requires finite values; got NaN at 11",
    ],
    [
      "a response that is not finite",
      () => findFitFault(columnsWith(depth), [...hours.slice(1), Number.POSITIVE_INFINITY]),
      "the response requires finite values; got Infinity at 11",
    ],
    [
      "columns of unequal length",
      () => fitLeastSquares(columnsWith(depth.slice(1)), hours),
      "predictors require the same length; depth has 11, others 12",
    ],
    [
      "a response of another length",
      () => fitLeastSquares(columnsWith(depth), hours.slice(1)),
      "the response requires one value an observation; got 11 for 12",
    ],
    [
      "one name twice",
      () => fitLeastSquares([...columnsWith(depth), named("depth", "", humidity)], hours),
      "predictors require names of their own; got depth twice",
    ],
    ["no predictor", () => fitLeastSquares([], hours), "a fit requires at least one predictor; got none"],
  ])("%s", (_, call, message) => {
    expect(call).toThrow(new RangeError(message));
  });
});
