import { describe, expect, test } from "vitest";
import { type VerdictGround, verdictOf } from "../../../src/report/changes/verdict.ts";

const ground = (changes: Partial<VerdictGround>): VerdictGround => ({
  measure: "kiln_hours",
  scope: "kiln",
  before: 14,
  total: { estimate: -1, low: -1.5, high: -0.5 },
  aim: null,
  tellable: 1,
  placebo: null,
  ...changes,
});
const interval = (low: number, high: number) => ({ estimate: (low + high) / 2, low, high });

describe("verdictOf(ground)", () => {
  test.each([
    ["fewer hours", ground({}), "helped"],
    ["more hours", ground({ total: interval(0.5, 1.5) }), "hurt"],
    ["less energy", ground({ measure: "energy_kwh", total: interval(-30, -10), tellable: 30 }), "helped"],
    ["more yield", ground({ measure: "dry_yield_pct", total: interval(0.2, 1.2) }), "helped"],
    ["less yield", ground({ measure: "dry_yield_pct", total: interval(-1.2, -0.2) }), "hurt"],
    [
      "more yield after the scale was changed",
      ground({ measure: "dry_yield_pct", scope: "scale", total: interval(0.2, 1.2) }),
      "moved",
    ],
    [
      "moisture without an aim",
      ground({ measure: "final_moisture_pct", before: 5, total: interval(-0.6, -0.2) }),
      "moved",
    ],
    [
      "moisture nearer to its aim",
      ground({ measure: "final_moisture_pct", before: 5, aim: 4.4, total: interval(-0.7, -0.3) }),
      "helped",
    ],
    [
      "moisture farther from its aim",
      ground({ measure: "final_moisture_pct", before: 4.4, aim: 4.4, total: interval(0.2, 0.6) }),
      "hurt",
    ],
    [
      "moisture from one side of its aim to the other",
      ground({ measure: "final_moisture_pct", before: 4.6, aim: 4.4, total: interval(-0.6, -0.2) }),
      "moved",
    ],
    ["an interval over nothing, and narrow", ground({ total: interval(-0.6, 0.4) }), "no difference"],
    ["an interval over nothing, and wide", ground({ total: interval(-1.6, 0.4) }), "cannot be told"],
  ] as const)("%s", (_, given, verdict) => {
    expect(verdictOf(given).verdict).toBe(verdict);
  });

  test("no difference bigger than the farther end of the interval", () => {
    expect(verdictOf(ground({ total: interval(-0.6, 0.4) })).noBiggerThan).toBe(0.6);
  });

  test("a difference that the first runs after the change show the other way round is not the change's", () => {
    const placebo = { dates: 50, asLarge: 0, sizes: [], runsEachSide: 10, own: 0.8 };
    expect(verdictOf(ground({ placebo }))).toMatchObject({ verdict: "cannot be told", doubtedByPlacebo: true });
  });

  test("more than one date in ten as large puts a told difference in doubt, fewer or too few dates do not", () => {
    const tried = (dates: number, asLarge: number) =>
      verdictOf(ground({ placebo: { dates, asLarge, sizes: [], runsEachSide: 10, own: -1 } }));
    expect(tried(50, 6)).toMatchObject({ verdict: "cannot be told", doubtedByPlacebo: true });
    expect(tried(50, 5)).toMatchObject({ verdict: "helped", doubtedByPlacebo: false });
    expect(tried(6, 3)).toMatchObject({ verdict: "helped", doubtedByPlacebo: false });
  });
});
