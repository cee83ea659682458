import { describe, expect, test } from "vitest";
import { ruleChoice } from "../../../src/analysis/controlCharts/ruleChoice.ts";
import type { EventRow } from "../../../src/report/eventRow.ts";
import type { RunRow } from "../../../src/report/runRow.ts";
import type { TargetRow } from "../../../src/report/targetRow.ts";
import { baselineChoice } from "../../../src/report/yieldMoisture/baselineChoice.ts";
import { besideSignal } from "../../../src/report/yieldMoisture/besideSignal.ts";
import { chartOf } from "../../../src/report/yieldMoisture/chartOf.ts";
import { type MeasuredRun, measuredRuns } from "../../../src/report/yieldMoisture/measuredRuns.ts";
import { moistureCost } from "../../../src/report/yieldMoisture/moistureCost.ts";
import { bareRun } from "../../support/madeUpReport.ts";

const DAY = 86_400_000;
const START = Date.UTC(2026, 0, 5, 8);
const ZONE = "Europe/Tallinn";

/** A batch off the kiln `day` days after the first. */
const batch = (day: number, part: Partial<RunRow> = {}): RunRow => ({
  ...bareRun,
  run: `r${String(day).padStart(2, "0")}`,
  variety: "Amber",
  grain: "barley",
  lot: "L1",
  loadedAt: START + day * DAY - 14 * 3_600_000,
  unloadedAt: START + day * DAY,
  finalMoisturePercent: 4.4,
  ...part,
});
const event = (day: number, kind: string, what: string): EventRow => ({
  on: Date.UTC(2026, 0, 5 + day),
  kind,
  scope: "kiln",
  what,
  alters: null,
});
const moisture = (rows: readonly RunRow[], samples: ReadonlyMap<string, readonly number[]> = new Map()) =>
  measuredRuns(rows, "final_moisture_pct", samples);
const decisions = { events: [], baselines: [], without: new Set<string>(), timeZone: ZONE };

describe("measuredRuns", () => {
  test("takes the mean of two samples or more before the number written beside them, and one sample not", () => {
    const samples = new Map([
      ["r00", [4, 5]],
      ["r01", [9]],
    ]);
    const { measured } = moisture([batch(0), batch(1)], samples);
    expect(measured.map(({ value }) => value)).toEqual([4.5, 4.4]);
  });

  test("puts batches in the order in which they came off the kiln, and counts the others by their reasons", () => {
    const found = moisture([
      batch(3),
      batch(1),
      batch(4, { unloadedAt: null }),
      batch(5, { finalMoisturePercent: null }),
      batch(6, { variety: null }),
    ]);
    expect(found.measured.map(({ row }) => row.run)).toEqual(["r01", "r03"]);
    expect(found.lacking).toEqual([
      { reason: "not off the kiln yet", count: 1 },
      { reason: "no final moisture", count: 1 },
      { reason: "no known grain lot", count: 1 },
    ]);
  });
});

describe("baselineChoice", () => {
  const runs: readonly MeasuredRun[] = moisture([batch(0), batch(4), batch(8), batch(12)]).measured;

  test("leaves out what an incident fell on and what was left out by hand, never a batch for its value", () => {
    const wild = moisture([batch(0), batch(4, { finalMoisturePercent: 40 }), batch(8)]).measured;
    expect(baselineChoice(wild, decisions).leftOut.size).toBe(0);
    const { leftOut } = baselineChoice(runs, {
      ...decisions,
      events: [event(4, "incident", "door left open"), event(8, "repair", "door mended")],
      without: new Set(["r12"]),
    });
    expect([...leftOut]).toEqual([
      [1, "door left open (9 Jan 2026)"],
      [3, "left out by hand"],
    ]);
  });

  test("takes the batches unloaded between the dates that settings name, the last day included", () => {
    const named = { variety: "any", runs: null, from: "2026-01-09", to: "2026-01-13" };
    expect(baselineChoice(runs, { ...decisions, baselines: [named] }).named).toEqual(new Set([1, 2]));
    const wheat = { ...named, variety: "wheat" };
    expect(baselineChoice(runs, { ...decisions, baselines: [wheat] }).named).toBeNull();
  });

  test("starts anew with the first batch loaded on the day of the event or later", () => {
    const phases = (day: number): readonly number[] =>
      baselineChoice(runs, { ...decisions, events: [event(day, "new-baseline", "new fan")] }).phases.map(
        ({ from }) => from,
      );
    // r04 was loaded on the evening of the third day, the 8th, and came off on the 9th.
    expect(phases(3)).toEqual([1]);
    expect(phases(4)).toEqual([2]);
    expect(phases(40)).toEqual([]);
  });
});

test("besideSignal names events from a fortnight before to a fortnight after, and a new lot of the variety", () => {
  const { measured } = moisture([batch(0), batch(30, { lot: "L2" }), batch(31, { lot: "L2" })]);
  const events = [
    event(10, "repair", "too early"),
    event(20, "repair", "belt"),
    event(25, "new-baseline", "anew"),
    event(44, "repair", "fan"),
    event(50, "repair", "too late"),
  ];
  expect(besideSignal(measured, 1, 2, events)).toEqual([
    "25 Jan 2026: belt",
    "18 Feb 2026: fan",
    "Amber from lot L2, before it L1",
  ]);
});

describe("moistureCost", () => {
  const targets: readonly TargetRow[] = [
    { variety: "any", measure: "final_moisture_pct", low: 3.6, target: 4.4, high: 5 },
  ];

  test("counts what dry batches could have weighed at the target, and refuses those above the highest", () => {
    // 13 batches over a year to the day: twelve of 200 kg at 3.0 % and one at 5.2 %.
    const rows = Array.from({ length: 13 }, (_, i) =>
      batch(0, {
        run: `m${i}`,
        unloadedAt: START + (i * 365.25 * DAY) / 12,
        finalMoisturePercent: i === 5 ? 5.2 : 3,
        maltKilograms: 200,
      }),
    );
    const cost = moistureCost(moisture(rows).measured, targets, []);
    // Dry matter stays: 200 × 0.97 / 0.956 = 202.929 kg, by the mass balance.
    expect(cost?.driedAwayKilogramsPerYear).toAgreeWithin(12 * (194 / 0.956 - 200), 1e-9);
    expect(cost?.refusedBatches).toBe(1);
    expect(cost?.refusedKilogramsPerYear).toAgreeWithin(200, 1e-9);
  });

  test("says nothing of fewer than twelve batches", () => {
    const rows = Array.from({ length: 11 }, (_, i) => batch(30 * i, { maltKilograms: 200 }));
    expect(moistureCost(moisture(rows).measured, targets, [])).toBeNull();
  });
});

test("chartOf says in a sentence that too few batches carry no limits", () => {
  const runs = moisture([batch(0), batch(4)]);
  const chart = chartOf({
    measure: "final_moisture_pct",
    runs,
    choice: ruleChoice(),
    baseline: baselineChoice(runs.measured, decisions),
    events: [],
  });
  expect(chart.tooLittle).toBe("2 batches have a final moisture; limits need at least five that are not all the same.");
  expect(chart.signals).toEqual([]);
  expect(chart.falseSignals).toBeNull();
});
