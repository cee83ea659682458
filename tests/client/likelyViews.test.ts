import { describe, expect, it } from "vitest";
import { likelyViews } from "../../src/client/likelyViews.ts";
import type { LoadedReport } from "../../src/client/loadedReport.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const made = madeUpReport(20);
const withChoices = (choices: Partial<LoadedReport["choices"]>): LoadedReport => ({
  ...made,
  choices: { ...made.choices, kilns: ["K1"], ...choices },
});
const varietiesOf = (views: readonly View[], view: View): readonly (string | null)[] =>
  views.flatMap(({ variety }) => (variety === view.variety ? [] : [variety]));

describe("likelyViews(view, report, parts)", () => {
  it("steps to the next variety of the list and to the one before, then two away, and round its end", () => {
    const report = withChoices({ varieties: ["A", "B", "C", "D"] });
    const at = (variety: string | null): View => ({ ...wholeView, variety });
    expect(varietiesOf(likelyViews(at("B"), report, ["kilnHours"]), at("B"))).toEqual(["C", "A", "D", null]);
    expect(varietiesOf(likelyViews(at(null), report, ["kilnHours"]), at(null))).toEqual(["A", "D", "B", "C"]);
  });

  it("names no view twice, and never the one that is shown", () => {
    const report = withChoices({ varieties: ["A"], kilns: ["K1", "K2"] });
    const views = likelyViews(wholeView, report, ["yieldMoisture"]);
    const texts = views.map((view) => JSON.stringify(view));
    expect(new Set(texts).size).toBe(texts.length);
    expect(texts).not.toContain(JSON.stringify(wholeView));
  });

  it("turns each rule of the charts on or off, one at a time, where charts are shown", () => {
    const rules = likelyViews(wholeView, made, ["yieldMoisture"]).flatMap((view) => view.rules ?? []);
    expect(new Set(rules)).toContain("eightOnOneSide");
    const sets = likelyViews(wholeView, made, ["yieldMoisture"]).flatMap((view) =>
      view.rules === null ? [] : [view.rules.length],
    );
    // The usual pair less one of it, twice, and with each of the five others.
    expect(sets).toEqual([1, 1, 3, 3, 3, 3, 3]);
    expect(likelyViews(wholeView, made, ["kilnHours"]).every((view) => view.rules === null)).toBe(true);
    const own: View = { ...wholeView, rules: ["cumulativeSum"] };
    expect(likelyViews(own, made, ["yieldMoisture"]).every((view) => view.rules === own.rules)).toBe(true);
  });

  it("leaves the latest batch out, beside those that are left out already", () => {
    const latest = made.runs[0]?.run ?? "";
    const other = made.runs[3]?.run ?? "";
    const view = { ...wholeView, without: [other] };
    expect(likelyViews(view, made, ["kilnHours"]).at(-1)?.without).toEqual([latest, other].sort());
  });

  it("guesses at nothing on pages that take long, or show nothing of the report's parts", () => {
    for (const parts of [[], ["varieties"], ["thermostat"], ["kilnHours", "steepGermination"]] as const) {
      expect(likelyViews(wholeView, made, parts)).toEqual([]);
    }
  });
});
