import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { signalGroups } from "../../../src/figures/controlCharts/signalGroups.ts";
import { signalName } from "../../../src/figures/controlCharts/signalWords.ts";
import { spanWithRoom } from "../../../src/figures/controlCharts/spanWithRoom.ts";
import type { ChartSignal } from "../../../src/report/controlChartResult.ts";
import { chartWith, signalOver } from "./handMadeChart.ts";

const { runs } = chartWith({ deviations: Array.from({ length: 40 }, () => 0) });
const rulesOf = (signals: readonly ChartSignal[]): string[][] =>
  signalGroups(runs, signals).map((group) => group.signals.map(({ rule }) => rule));

describe("signalGroups(runs, signals)", () => {
  const stretch = signalOver("weightedMean", 5, 14, "below", -0.8);

  test("joins what overlaps on one side and keeps apart what does not", () => {
    expect(rulesOf([stretch, signalOver("beyondLimits", 9, 9, "below", -3.2)])).toEqual([
      ["weightedMean", "beyondLimits"],
    ]);
    expect(rulesOf([stretch, signalOver("beyondLimits", 9, 9, "above", 3.2)])).toHaveLength(2);
    expect(rulesOf([stretch, signalOver("beyondLimits", 20, 20, "below", -3.2)])).toHaveLength(2);
  });

  test("names a batch before the stretch where it makes more than half of it", () => {
    const pulled = signalOver("weightedMean", 5, 10, "below", -1.4);
    expect(rulesOf([pulled, signalOver("beyondLimits", 10, 10, "below", -6.1)])).toEqual([
      ["beyondLimits", "weightedMean"],
    ]);
  });

  test("passes over a signal whose batches are not shown", () => {
    expect(signalGroups(runs, [{ ...stretch, runs: ["99-999"], raisedAt: "99-999" }])).toEqual([]);
  });
});

describe("signalName(signal)", () => {
  test("says every rule in plain words, without numbers or letters of rules", () => {
    const said = (
      [
        "beyondLimits",
        "weightedMean",
        "cumulativeSum",
        "eightOnOneSide",
        "twoOfThreeBeyondTwoThirds",
        "fourOfFiveBeyondOneThird",
      ] as const
    ).map((rule) => signalName(signalOver(rule, 0, 8, "below", -1)));
    expect(said).toEqual([
      "below the limits",
      "running mean low",
      "cumulative sum low",
      "9 in a row below the centre",
      "2 of 3 past two thirds of the way down",
      "4 of 5 past a third of the way down",
    ]);
    expect(signalName(signalOver("sixRisingOrFalling", 0, 5, "rising", 2))).toBe("6 in a row, each higher");
  });
});

describe("spanWithRoom(values, height, room)", () => {
  test("leaves exactly the room asked for over and under the values", () => {
    const value = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 2 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        (values, over, under) => {
          const [low, high] = [Math.min(...values), Math.max(...values)];
          fc.pre(high - low > 1e-3);
          const [from, to] = spanWithRoom(values, 300, { over, under });
          const pixels = 300 / (to - from);
          expect((to - high) * pixels).toLieWithin(over, 1e-6);
          expect((low - from) * pixels).toLieWithin(under, 1e-6);
        },
      ),
    );
  });

  test("refuses a height that the room fills", () => {
    expect(() => spanWithRoom([0, 1], 50, { over: 30, under: 20 })).toThrow(RangeError);
    expect(() => spanWithRoom([], 50, { over: 0, under: 0 })).toThrow(RangeError);
  });
});
