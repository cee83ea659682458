import { describe, expect, it } from "vitest";
import { allSteps } from "../../../src/analysis/allSteps.ts";
import { analyseKilnHours } from "../../../src/report/kilnHours/analyseKilnHours.ts";
import type { RunRow } from "../../../src/report/runRow.ts";
import type { TargetRow } from "../../../src/report/targetRow.ts";
import { analyseVarieties, type VarietiesOptions } from "../../../src/report/varieties/analyseVarieties.ts";
import { followVarieties, withVarietiesFollowUp } from "../../../src/report/varieties/followUp.ts";
import { insideTarget, tolerancesOf } from "../../../src/report/varieties/tolerances.ts";
import type { LabRow, VarietiesResult } from "../../../src/report/varietiesResult.ts";
import { bareRun } from "../../support/madeUpReport.ts";

const DAY = 86_400_000;
const START = Date.UTC(2025, 0, 1);

const target = (variety: string, measure: string, low: number | null, aim: number | null, high: number | null) =>
  ({ variety, measure, low, target: aim, high }) satisfies TargetRow;

const targets = [target("any", "final_moisture_pct", 3.6, 4.4, 5), target("any", "steep_out_moisture_pct", 43, 44, 45)];

/** Batches of one variety, a lot every four, by their moistures. */
function batches(variety: string, moistures: readonly number[], change: (at: number) => Partial<RunRow> = () => ({})) {
  return moistures.map(
    (finalMoisturePercent, at): RunRow => ({
      ...bareRun,
      run: `${variety}${at}`,
      variety,
      grain: "barley",
      lot: `${variety} lot ${Math.floor(at / 4)}`,
      unloadedAt: START + at * 9 * DAY,
      finalMoisturePercent,
      finalMoistureBasis: "logged",
      steepOutMoisturePercent: 44 + 0.3 * Math.sin(at * 2.3),
      ...change(at),
    }),
  );
}
const wave = (count: number, middle: number, height: number): number[] =>
  Array.from({ length: count }, (_, at) => middle + height * Math.sin(at * 1.7));

function analyse(runs: readonly RunRow[], change: Partial<VarietiesOptions> = {}): VarietiesResult {
  const without = new Set<string>();
  return analyseVarieties(runs, {
    targets,
    halfWidths: {},
    samples: new Map(),
    lab: [],
    lots: [],
    kilnHours: analyseKilnHours([], {
      air: null,
      without,
      targetMoisturePercent: 4.4,
      pressurePascals: 101_325,
      timeZone: "UTC",
    }),
    loads: [],
    events: [],
    offsets: new Map(),
    without,
    timeZone: "UTC",
    ...change,
  });
}
const scoreOf = (result: VarietiesResult, variety: string) => {
  const found = result.scores.find((score) => score.variety === variety);
  if (found === undefined) throw new RangeError(`no score of ${variety}`);
  return found;
};
const finished = (result: VarietiesResult): VarietiesResult =>
  withVarietiesFollowUp(result, allSteps(followVarieties(result)));

describe("tolerancesOf(variety, grain, targets, halfWidths)", () => {
  it("takes the variety's own row before its grain's, and that before any", () => {
    const rows = [
      target("any", "dry_yield_pct", 88, 90, null),
      target("barley", "dry_yield_pct", 89, 91, null),
      target("Specimen", "dry_yield_pct", 90, 92, null),
    ];
    const lowOf = (variety: string, grain: string) => tolerancesOf(variety, grain, rows, {}).found[0]?.tolerance.low;
    expect([lowOf("Specimen", "barley"), lowOf("Sampler", "barley"), lowOf("Sampler", "wheat")]).toEqual([90, 89, 88]);
  });

  it("puts house.toml's half-width on either side of a target without limits, and of 0 for kiln hours", () => {
    const rows = [target("any", "final_moisture_pct", null, 4.5, null)];
    const halfWidths = { final_moisture_pct: 0.5, kiln_hours_over_expected: 1.5, dry_yield_pct: 1 };
    const { found, notCounted } = tolerancesOf("Specimen", "barley", rows, halfWidths);
    expect(found).toEqual([
      { tolerance: { measure: "final_moisture_pct", low: 4, target: 4.5, high: 5 }, from: "house.toml" },
      { tolerance: { measure: "kiln_hours_over_expected", low: -1.5, target: 0, high: 1.5 }, from: "house.toml" },
    ]);
    expect(notCounted.map(({ measure }) => measure)).toEqual(["dry_yield_pct"]);
  });

  it("leaves targets.csv's own limits alone where house.toml speaks of them too", () => {
    const { found } = tolerancesOf("Specimen", null, targets, { final_moisture_pct: 0.1 });
    expect(found[0]).toEqual({
      tolerance: { measure: "final_moisture_pct", low: 3.6, target: 4.4, high: 5 },
      from: "targets.csv",
    });
  });

  it("reads a target in SRM or Lintner as the tables hold it", () => {
    expect(insideTarget(target("any", "colour_srm", 1, 2, 3))).toEqual(target("any", "colour_ebc", 1.97, 3.94, 5.91));
    expect(insideTarget(target("any", "diastatic_power_lintner", 50, null, null)).low).toBe(159);
  });
});

describe("analyseVarieties(runs, options)", () => {
  it("gives no score below 5 batches, an early one below 12 and an interval from 12 on", () => {
    const runs = [
      ...batches("Few", wave(4, 4.4, 0.2)),
      ...batches("Early", wave(11, 4.4, 0.2)),
      ...batches("Full", wave(20, 4.4, 0.2)),
    ];
    const first = analyse(runs);
    expect(["Few", "Early", "Full"].map((name) => scoreOf(first, name).standing)).toEqual(["none", "early", "full"]);
    expect(scoreOf(first, "Few").onTarget).toBeNull();
    expect(scoreOf(first, "Few").tooLittle).toBe("4 batches of Few; a score needs 5.");
    expect(first.followed).toBe(false);
    const then = finished(first);
    expect(then.followed).toBe(true);
    expect(scoreOf(then, "Early").onTarget?.low).toBeNull();
    const { estimate = 0, low, high } = scoreOf(then, "Full").onTarget ?? {};
    expect(low).toBeLessThanOrEqual(estimate);
    expect(high).toBeGreaterThanOrEqual(estimate);
    expect(then.scores.at(-1)?.variety).toBe("Few");
  });

  it("says why twelve batches of two lots have no interval", () => {
    const score = scoreOf(analyse(batches("One", wave(12, 4.4, 0.2), (at) => ({ lot: at < 6 ? "A" : "B" }))), "One");
    expect(score.standing).toBe("full");
    expect(score.noInterval).toBe("Its batches came from 2 lots; an interval needs 4.");
  });

  it("counts what met every tolerance over batches that recorded all of them", () => {
    const runs = batches("Plain", [4.4, 4.4, 5.2, 4.3, 4.5, 4.6, 3.5, 4.4], (at) =>
      at === 0 ? { steepOutMoisturePercent: null } : {},
    );
    const score = scoreOf(analyse(runs), "Plain");
    expect([score.allBatches, score.batches, score.met]).toEqual([8, 7, 5]);
    expect(score.batchesInOrder[0]?.metAll).toBeNull();
    expect(score.batchesInOrder[2]?.metAll).toBe(false);
  });

  it("lets a run left out by hand count for nothing", () => {
    const runs = batches("Plain", [...wave(12, 4.4, 0.1), 9]);
    const with9 = scoreOf(analyse(runs), "Plain");
    const without = scoreOf(analyse(runs, { without: new Set(["Plain12"]) }), "Plain");
    expect(without.allBatches).toBe(12);
    expect(without.onTarget?.estimate ?? 0).toBeGreaterThan((with9.onTarget?.estimate ?? 100) + 5);
  });

  it("puts the measure that costs the score most first", () => {
    const runs = batches("Plain", wave(14, 4.4, 0.1), (at) => ({
      steepOutMoisturePercent: 44 + Math.sin(at * 2.3) * 1.2,
    }));
    const [first, second] = scoreOf(analyse(runs), "Plain").measures;
    expect(first?.tolerance.measure).toBe("steep_out_moisture_pct");
    expect(first?.drag ?? 0).toBeGreaterThan(second?.drag ?? 100);
  });

  it("lets a laboratory result that few batches have stand beside the score", () => {
    const lab = [0, 3, 6, 9, 12].map(
      (at): LabRow => ({
        run: `Plain${at}`,
        testedOn: START,
        laboratory: "Test laboratory",
        methodSet: at === 12 ? "other" : "EBC",
        values: { colour_ebc: 3 + at / 30 },
      }),
    );
    const tested = [...targets, target("any", "colour_ebc", 2.5, 3.5, 5)];
    const runs = batches("Plain", wave(14, 4.4, 0.1));
    const four = scoreOf(analyse(runs, { lab, targets: tested }), "Plain");
    // One of the five is of another method set, and sets are not mixed.
    expect(four.beside).toEqual([]);
    expect(four.notCounted).toEqual([{ measure: "colour_ebc", reason: "4 of 14 batches have it; a score needs 5" }]);
    const alike = lab.map((row) => ({ ...row, methodSet: "EBC" }));
    const five = scoreOf(analyse(runs, { lab: alike, targets: tested }), "Plain");
    expect(five.beside.map(({ tolerance }) => tolerance.measure)).toEqual(["colour_ebc"]);
    expect(five.measures).toHaveLength(2);
    expect(five.onTarget).toEqual(four.onTarget);
  });

  it("does not see in what order runs are handed over", () => {
    const runs = [...batches("One", wave(14, 4.4, 0.3)), ...batches("Two", wave(9, 4.2, 0.2))];
    expect(analyse([...runs].reverse()).scores).toEqual(analyse(runs).scores);
  });

  it("says that there is nothing to hold batches against", () => {
    expect(analyse([]).tooLittle).toBe("No batch of a known variety is off the kiln yet.");
    expect(analyse(batches("One", wave(8, 4.4, 0.1)), { targets: [] }).tooLittle).toMatch(/sets a tolerance/);
  });

  it("compares the last full quarter of the year with the one before", () => {
    const runs = batches("Plain", wave(30, 4.4, 0.1));
    const [moisture] = analyse(runs).periods;
    // 30 batches, one every nine days from 1 January: the last on 19 September.
    expect(moisture?.now.name).toBe("April to June 2025");
    expect(moisture?.before.name).toBe("January to March 2025");
    expect([moisture?.before.batches, moisture?.now.batches]).toEqual([10, 11]);
  });
});

describe("followVarieties(result)", () => {
  it("foretells from the past alone: what comes last changes no forecast before it", () => {
    const runs = batches("Plain", wave(40, 4.5, 0.5));
    const last = { ...(runs.at(-1) as RunRow), finalMoisturePercent: 4.9 };
    const other = { ...last, finalMoisturePercent: 4.45 };
    const said = (end: RunRow) => finished(analyse([...runs.slice(0, -1), end])).backTest;
    const [one, two] = [said(last), said(other)];
    // Both met every tolerance, so that outcomes and all forecasts are the same.
    expect(one?.forecasts).toBe(35);
    expect(one?.brierScore).toAgreeWithin(two?.brierScore ?? Number.NaN, 1e-9);
    expect(one?.groups.reduce((sum, { forecasts }) => sum + forecasts, 0)).toBe(35);
  });
});
