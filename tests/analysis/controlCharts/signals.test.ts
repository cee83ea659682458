import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartSeries } from "../../../src/analysis/controlCharts/chartSeries.ts";
import { cusum } from "../../../src/analysis/controlCharts/cusum.ts";
import { ewma } from "../../../src/analysis/controlCharts/ewma.ts";
import { type RunRuleName, runRuleSignals } from "../../../src/analysis/controlCharts/runRules.ts";
import { groupSignals } from "../../../src/analysis/controlCharts/signal.ts";

const signals = (values: readonly number[], rule: RunRuleName) => runRuleSignals(chartSeries(values, 0, 1), rule);
const spans = (values: readonly number[], rule: RunRuleName) =>
  signals(values, rule).map(({ from, to, raisedAt, direction }) => [from, to, raisedAt, direction]);

describe("runRuleSignals", () => {
  test("beyondLimits: on the limit is not beyond; neighbours beyond it are one signal", () => {
    expect(spans([0, 3, -3, 3.1, 3.4, 0, -3.2], "beyondLimits")).toEqual([
      [3, 4, 3, "above"],
      [6, 6, 6, "below"],
    ]);
    expect(signals([0, 3.1, 3.5], "beyondLimits")[0]?.size).toLieWithin(3.3, 1e-12);
  });

  test("eightOnOneSide: a value on the centre ends the run; a longer run is one signal from its first", () => {
    const eight = [0.1, 0.2, 0.1, 0.3, 0.1, 0.2, 0.4, 0.1];
    expect(spans([-1, ...eight], "eightOnOneSide")).toEqual([[1, 8, 8, "above"]]);
    expect(spans([-1, ...eight, 0.2, 0.1, -1], "eightOnOneSide")).toEqual([[1, 10, 8, "above"]]);
    expect(spans([...eight.slice(0, 4), 0, ...eight.slice(4)], "eightOnOneSide")).toEqual([]);
  });

  test("twoOfThreeBeyondTwoThirds: on one side, the last of them beyond", () => {
    expect(spans([2.1, 0, 2.2], "twoOfThreeBeyondTwoThirds")).toEqual([[0, 2, 2, "above"]]);
    expect(spans([2.1, -2.2, 0], "twoOfThreeBeyondTwoThirds")).toEqual([]);
    expect(spans([2.1, 0, 0, 2.2], "twoOfThreeBeyondTwoThirds")).toEqual([]);
    expect(spans([0, -2.1, -2.3, 0], "twoOfThreeBeyondTwoThirds")).toEqual([[1, 2, 2, "below"]]);
  });

  test("fourOfFiveBeyondOneThird: four of five, not three", () => {
    expect(spans([1.1, 1.2, 0, 1.1, 1.3], "fourOfFiveBeyondOneThird")).toEqual([[0, 4, 4, "above"]]);
    expect(spans([1.1, 1.2, 0, 0, 1.1, 1.3], "fourOfFiveBeyondOneThird")).toEqual([]);
    expect(spans([-1.1, -1.2, -1.1, -1.3], "fourOfFiveBeyondOneThird")).toEqual([[0, 3, 3, "below"]]);
  });

  test("sixRisingOrFalling: six values, each above the last; equal ones end it", () => {
    expect(spans([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.2], "sixRisingOrFalling")).toEqual([[0, 5, 5, "rising"]]);
    expect(signals([0, 0.1, 0.2, 0.3, 0.4, 0.5], "sixRisingOrFalling")[0]?.size).toLieWithin(0.5, 1e-12);
    expect(spans([0, 0.1, 0.2, 0.2, 0.4, 0.5, 0.6], "sixRisingOrFalling")).toEqual([]);
    expect(spans([5, 4, 3, 2, 1, 0, -1], "sixRisingOrFalling")).toEqual([[0, 6, 5, "falling"]]);
  });

  test("mirroring values about the centre mirrors every signal; scaling values and sigma scales sizes only", () => {
    const rules: RunRuleName[] = [
      "beyondLimits",
      "eightOnOneSide",
      "twoOfThreeBeyondTwoThirds",
      "fourOfFiveBeyondOneThird",
      "sixRisingOrFalling",
    ];
    const values = fc.array(fc.integer({ min: -220, max: 220 }), { maxLength: 60 });
    fc.assert(
      fc.property(values, fc.constantFrom(...rules), (parts, rule) => {
        // Parts of 64, so that scaling by 4 is exact.
        const x = parts.map((v) => v / 64);
        const here = runRuleSignals(chartSeries(x, 0, 1), rule);
        const mirror = { above: "below", below: "above", rising: "falling", falling: "rising" } as const;
        const mirrored = runRuleSignals(
          chartSeries(
            x.map((v) => -v),
            0,
            1,
          ),
          rule,
        );
        expect(mirrored.map((s) => [s.from, s.to, s.raisedAt, mirror[s.direction]])).toEqual(
          here.map((s) => [s.from, s.to, s.raisedAt, s.direction]),
        );
        const scaled = runRuleSignals(
          chartSeries(
            x.map((v) => 4 * v + 8),
            8,
            4,
          ),
          rule,
        );
        expect(scaled.map(({ size }) => size)).toEqual(here.map(({ size }) => 4 * size));
      }),
    );
  });
});

describe("ewma and cusum", () => {
  const quiet = [0.3, -0.2, 0.1, -0.4, 0.2, -0.1, 0.4, -0.3, 0.1, -0.1];
  const faulty = [1.7, 2.1, 1.8, 2.3, 1.9, 2.2, 2, 1.9];
  const after = [-0.1, 0.2, -0.3, 0.1, 0, -0.2, 0.3, -0.1, 0.1, -0.2];

  test.each([
    { name: "ewma", find: ewma },
    { name: "cusum", find: cusum },
  ])("$name puts a fault of two sigma where it was, though its mean or sum stays out long after", ({ find }) => {
    const found = find(chartSeries([...quiet, ...faulty, ...after], 0, 1)).signals;
    expect(found).toHaveLength(1);
    expect(found[0]?.direction).toBe("above");
    expect(found[0]?.raisedAt).toBeLessThanOrEqual(15);
    expect(Math.abs((found[0]?.from ?? 0) - 10)).toBeLessThanOrEqual(2);
    expect(Math.abs((found[0]?.to ?? 0) - 17)).toBeLessThanOrEqual(1);
    expect(found[0]?.size).toLieWithin(2, 0.35);
  });

  test("ewma: a signal that lasts to the end ends with the end", () => {
    const [signal] = ewma(chartSeries([...quiet, ...faulty, ...faulty], 0, 1)).signals;
    expect(signal?.to).toBe(quiet.length + 2 * faulty.length - 1);
  });

  test("ewma with one sigma for all has the closed-form variance", () => {
    const { reach } = ewma(chartSeries(quiet, 0, 2), { weight: 0.2, limit: 3 });
    reach.forEach((half, at) => {
      expect(half).toAgreeWithin(3 * 2 * Math.sqrt((0.2 / 1.8) * (1 - 0.8 ** (2 * (at + 1)))), 1e-12);
    });
  });

  test("both run on the deviations of their own variety: equal standardised series give equal sums", () => {
    const sigmas = quiet.map((_, at) => (at % 2 === 0 ? 1 : 5));
    const mixed = { deviations: quiet.map((v, at) => v * (sigmas[at] as number)), sigmas };
    const plain = cusum(chartSeries(quiet, 0, 1));
    cusum(mixed).upper.forEach((sum, at) => {
      expect(sum).toLieWithin(plain.upper[at] as number, 1e-12);
    });
  });
});

test("groupSignals says once what several rules see, and keeps the two sides apart", () => {
  const signal = (rule: "beyondLimits" | "weightedMean", from: number, to: number, direction: "above" | "below") =>
    ({ rule, from, to, raisedAt: to, size: 1, direction }) as const;
  const groups = groupSignals([
    signal("weightedMean", 3, 9, "above"),
    signal("beyondLimits", 5, 5, "above"),
    signal("beyondLimits", 6, 6, "below"),
    signal("beyondLimits", 20, 20, "above"),
  ]);
  expect(groups.map(({ from, to, upwards }) => [from, to, upwards])).toEqual([
    [3, 9, true],
    [6, 6, false],
    [20, 20, true],
  ]);
  expect(groups[0]?.signals.map(({ rule }) => rule)).toEqual(["beyondLimits", "weightedMean"]);
  expect(groups[0]?.raisedAt).toBe(5);
});
