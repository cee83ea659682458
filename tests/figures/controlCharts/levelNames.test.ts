import { describe, expect, test } from "vitest";
import { levelNames } from "../../../src/figures/controlCharts/levelNames.ts";
import type { SpreadLevel } from "../../../src/figures/controlCharts/spreadLevels.ts";

const level = (count: number, high: number): SpreadLevel => ({ from: 0, to: 1, count, centre: 0.2, low: 0, high });
const room = { narrow: false, least: 0.08 };

describe("levelNames(ending, room)", () => {
  test("names a line alone the limit, and the usual spread", () => {
    expect(levelNames([level(3, 0.5)], room).map(({ y, rows }) => [y, rows])).toEqual([
      [0.5, ["limit"]],
      [0.2, ["usual"]],
    ]);
  });

  test("gives each number of samples its own name where there is room for it", () => {
    const names = levelNames([level(2, 0.6), level(3, 0.5)], room);
    expect(names.map(({ rows }) => rows)).toEqual([["2 samples"], ["3 samples"], ["usual"]]);
  });

  test("puts limits that lie too close under one name, from the top line down, between them", () => {
    const [two, close] = levelNames([level(2, 0.75), level(5, 0.4), level(3, 0.5), level(4, 0.45)], room);
    expect(two?.rows).toEqual(["2 samples"]);
    expect(close?.rows).toEqual(["3, 4, 5", "samples"]);
    expect(close?.y).toAgreeWithin(0.45, 1e-12);
  });

  test("names nothing where nothing is drawn", () => {
    expect(levelNames([], room)).toEqual([]);
  });
});
