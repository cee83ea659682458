import { describe, expect, it } from "vitest";
import { runsEachSide } from "../../../src/analysis/beforeAfter/trialPower.ts";
import { answerTrial } from "../../../src/report/changes/answerTrial.ts";
import { runsFor } from "../../../src/report/changes/trialPlans.ts";
import type { TrialPlan } from "../../../src/report/changesResult.ts";
import { wholeView } from "../../../src/report/view.ts";

const plans: readonly TrialPlan[] = [
  {
    measure: "kiln_hours",
    spread: 1,
    runs: 90,
    rows: [0.5, 1, 2].map((difference) => ({ difference, ...runsFor(difference, 1) })),
  },
  { measure: "dry_yield_pct", spread: 0.8, runs: 90, rows: [] },
];
const asked = (measure: string | null, difference: string | null) =>
  answerTrial(plans, { ...wholeView, trial: { measure, difference } });

describe("answerTrial(plans, view)", () => {
  it("rounds the runs up: 1 at a spread of 1 takes 17 a side for 80 and 23 for 90 in 100 (R: 16.71 and 22.02)", () => {
    expect(asked(null, "1")).toEqual({
      kind: "runs",
      measure: "kiln_hours",
      row: { difference: 1, runsEachSide80: 17, runsEachSide90: 23 },
    });
  });

  it("takes the middle difference where nothing is typed, a comma for a point, and the measure asked for", () => {
    expect(asked(null, null)).toEqual(asked("kiln_hours", "1"));
    const wanted = Math.ceil(runsEachSide({ difference: 0.4, spread: 0.8, power: 0.8 }) ?? 0);
    expect(asked("dry_yield_pct", " 0,4 ")).toMatchObject({
      measure: "dry_yield_pct",
      row: { runsEachSide80: wanted },
    });
  });

  it("takes the first measure where the one asked for has no plan", () => {
    expect(asked("colour", "1")).toMatchObject({ measure: "kiln_hours" });
  });

  it.each(["none", "-1", "0", "1e3"])("refuses %s with a sentence", (typed) => {
    expect(asked(null, typed)).toEqual({ kind: "refusal", sentence: "The difference must be a number above 0." });
  });

  it("is null without a plan", () => {
    expect(answerTrial([], wholeView)).toBeNull();
  });
});
