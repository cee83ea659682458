import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, test } from "vitest";
import { SHALLOWER_BED, SLIPPING_BELT } from "../../../scripts/demo/truths.ts";
import { reportFromFolder } from "../../../src/report/atBuild.ts";
import type { ChartedMeasure, ChartSignal, ControlChart } from "../../../src/report/controlChartResult.ts";
import { printIsoDate } from "../../../src/units/instant.ts";

let charts: readonly ControlChart[] = [];
beforeAll(async () => {
  const folder = fileURLToPath(new URL("../../../data/demo", import.meta.url));
  charts = (await reportFromFolder(folder, null)).report.yieldMoisture.charts;
}, 60_000);

const chartFor = (measure: ChartedMeasure): ControlChart => {
  const chart = charts.find((candidate) => candidate.measure === measure);
  if (!chart) throw new Error(`no chart of ${measure}`);
  return chart;
};
const date = (instant: number): string => printIsoDate(instant, "Europe/Tallinn");
/** The day on which the batch that raised a signal came off the kiln. */
const raisedOn = (chart: ControlChart, { raisedAt }: ChartSignal): string =>
  date(chart.runs.find(({ run }) => run === raisedAt)?.at ?? Number.NaN);

describe("the committed demo, read as the build reads it", () => {
  test("shows the mis-set scale as one batch far below the limits of yield, with what was logged two days later", () => {
    const signals = chartFor("dry_yield_pct").signals.filter(
      ({ rule, size }) => rule === "beyondLimits" && size < -5 && size > -8,
    );
    expect(signals).toHaveLength(1);
    expect(signals[0]?.runs).toHaveLength(1);
    expect(signals[0]?.beside.join()).toMatch(/scale found mis-set/);
  });

  test("shows the slipping belt as damp malt by both of the usual rules, while it slipped, with its repair beside", () => {
    const chart = chartFor("final_moisture_pct");
    const slipping = chart.signals.filter((signal) => {
      const on = raisedOn(chart, signal);
      return on > SLIPPING_BELT.from && on <= SLIPPING_BELT.repairedOn;
    });
    expect(new Set(slipping.map(({ rule }) => rule))).toEqual(new Set(["beyondLimits", "weightedMean"]));
    expect(slipping.every(({ direction }) => direction === "above")).toBe(true);
    expect(slipping.flatMap(({ beside }) => beside).join()).toMatch(/fan belt found slack/);
  });

  test("sends no batch above its highest moisture but while the belt slipped", () => {
    const { runs, capability } = chartFor("final_moisture_pct");
    const high = capability[0]?.high ?? Number.NaN;
    const above = runs.filter(({ value }) => value > high).map(({ at }) => date(at));
    expect(above.length).toBeGreaterThan(0);
    for (const on of above) expect(on > SLIPPING_BELT.from && on <= SLIPPING_BELT.repairedOn, on).toBe(true);
  });

  test("takes its limits since the bed was laid shallower from batches before the belt slipped", () => {
    for (const { phases, runs } of charts) {
      const phase = phases.findIndex(({ from }) => date(from) > SHALLOWER_BED.on);
      const baseline = runs.filter((run) => run.phase === phase && run.inBaseline);
      expect(baseline.length).toBeGreaterThan(20);
      for (const { at } of baseline) expect(date(at) < SLIPPING_BELT.from).toBe(true);
    }
  });
});
