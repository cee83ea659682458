import { describe, expect, test } from "vitest";
import { controlChart } from "../../../src/analysis/controlCharts/controlChart.ts";
import { firstOrderResiduals, neighboursAreRelated } from "../../../src/analysis/controlCharts/firstOrderResiduals.ts";
import { meansAsIndividuals } from "../../../src/analysis/controlCharts/meansAsIndividuals.ts";
import { allRules, ruleChoice } from "../../../src/analysis/controlCharts/ruleChoice.ts";
import { sChart } from "../../../src/analysis/controlCharts/sChart.ts";
import { lagOneAutocorrelation } from "../../../src/analysis/lagOneAutocorrelation.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { gaussian } from "../gaussian.ts";

const noise = (seed: number, count: number) => Array.from(gaussian(seededRandom(seed), count));
const named = (values: readonly number[], group = "only") => values.map((value) => ({ value, group }));

/** A first-order autoregression with innovations of spread 1. */
function related(seed: number, count: number, phi: number): number[] {
  let before = 0;
  return noise(seed, count).map((shock) => {
    before = phi * before + shock;
    return before;
  });
}

describe("controlChart", () => {
  const choice = ruleChoice(allRules);

  test("signals a shift of two sigma by its run, size and side, in the indices given", () => {
    const values = noise(3, 80).map((v, at) => 90 + 0.5 * (at >= 50 && at < 62 ? v - 2.5 : v));
    const chart = controlChart(named(values), ruleChoice());
    const mean = chart.signals.find(({ rule }) => rule === "weightedMean");
    expect(mean?.direction).toBe("below");
    expect(mean?.raisedAt).toBeGreaterThanOrEqual(50);
    expect(mean?.raisedAt).toBeLessThan(58);
    expect(Math.abs((mean?.from ?? 0) - 50)).toBeLessThanOrEqual(3);
    expect(Math.abs((mean?.to ?? 0) - 61)).toBeLessThanOrEqual(3);
    expect(mean?.size).toLieWithin(-1.25, 0.5);
  });

  test("judges each variety by its own centre: two levels far apart are no signal", () => {
    const values = noise(4, 60);
    const points = values.map((v, at) => ({ value: at % 2 === 0 ? 80 + v : 95 + v, group: at % 2 === 0 ? "a" : "b" }));
    const mixed = controlChart(points, choice);
    const one = controlChart(named(values), choice);
    expect(mixed.phases[0]?.groups.map(({ group }) => group)).toEqual(["a", "b"]);
    expect(mixed.signals.length).toBeLessThanOrEqual(one.signals.length + 2);
    expect(Math.max(...(mixed.phases[0]?.deviations ?? []))).toBeLessThan(4);
  });

  test("a new baseline after a lasting change makes the new level the centre, and sums start anew", () => {
    const values = noise(5, 80).map((v, at) => (at >= 40 ? v + 4 : v));
    const without = controlChart(named(values), choice);
    const withEvent = controlChart(named(values), choice, { newBaselineAt: [40] });
    expect(without.signals.some(({ raisedAt }) => raisedAt >= 40)).toBe(true);
    expect(withEvent.phases).toHaveLength(2);
    expect(withEvent.phases[1]?.groups[0]?.limits?.centre.estimate).toLieWithin(4, 0.8);
    expect(Math.abs(withEvent.phases[1]?.ewma.means[0] ?? 9)).toBeLessThan(0.4);
    const lasting = (chart: typeof without) => chart.signals.filter(({ from, to }) => to - from >= 30);
    expect(lasting(without).length).toBeGreaterThan(0);
    expect(lasting(withEvent)).toEqual([]);
  });

  test("points without limits are stepped over, not judged", () => {
    const points = [...named(noise(6, 30)), { value: 1e6, group: "new" }, ...named(noise(7, 30))];
    const chart = controlChart(points, choice, { leftOut: new Set([30]) });
    expect(chart.phases[0]?.judged).not.toContain(30);
    expect(chart.phases[0]?.judged).toHaveLength(60);
    expect(chart.phases[0]?.groups[1]).toMatchObject({ limits: null, withoutLimits: "tooFew" });
    expect(chart.signals.every(({ from }) => from !== 30)).toBe(true);
  });

  test("runs on residuals where neighbours are related, and so signals far less", () => {
    const values = related(8, 400, 0.75);
    const chart = controlChart(named(values), choice, { baselineCount: 60 });
    const plain = controlChart(named(noise(8, 400)), choice, { baselineCount: 60 });
    expect(chart.phases[0]?.residualsOf?.coefficient.low).toBeGreaterThan(0);
    expect(plain.phases[0]?.residualsOf).toBeNull();
    const residuals = chart.phases[0]?.series.deviations ?? [];
    expect(Math.abs(lagOneAutocorrelation(residuals).estimate)).toBeLessThan(0.2);
  });

  test("says nothing of no points", () => {
    expect(controlChart([], choice)).toEqual({ phases: [], signals: [] });
  });
});

describe("firstOrderResiduals", () => {
  test("takes the baseline's own correlation out of it and keeps the spread of the shocks", () => {
    const values = related(9, 2000, 0.6);
    const { coefficient, residuals } = firstOrderResiduals(values);
    expect(coefficient.estimate).toLieWithin(0.6, 0.06);
    expect(Math.abs(lagOneAutocorrelation(residuals).estimate)).toBeLessThan(0.05);
    expect(Math.sqrt(residuals.reduce((sum, e) => sum + e * e, 0) / 2000)).toLieWithin(1, 0.06);
  });

  test("calls unrelated neighbours related about one time in twenty, never below twelve values", () => {
    const found = Array.from({ length: 400 }, (_, seed) => neighboursAreRelated(noise(seed + 100, 40)));
    // 400 series: 0.05 within 3 standard errors of 0.011; small samples bias it downwards.
    expect(found.filter(Boolean).length / 400).toBeLessThan(0.085);
    expect(neighboursAreRelated([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11])).toBe(false);
  });
});

describe("samples within batches", () => {
  test("sChart: more samples a batch narrow its limits about the same sigma", () => {
    const samples = Array.from({ length: 60 }, (_, at) => noise(at + 1, at % 2 === 0 ? 2 : 6));
    const chart = sChart(samples);
    expect(chart?.sigma).toLieWithin(1, 0.1);
    const [two, six] = chart?.points ?? [];
    expect(two?.high).toBeGreaterThan(six?.high ?? Number.NaN);
    expect(two?.falseSignalChance).toLieWithin(0.0092, 5e-4);
    expect(six?.centre).toBeGreaterThan(two?.centre ?? Number.NaN);
  });

  test("sChart takes sigma from the baseline alone, and signals a bed that is uneven", () => {
    const samples = [...Array.from({ length: 30 }, (_, at) => noise(at + 1, 4)), noise(99, 4).map((v) => 8 * v)];
    const chart = sChart(samples, { baseline: Array.from({ length: 30 }, (_, at) => at) });
    const last = chart?.points[30];
    expect(last?.standardDeviation).toBeGreaterThan(last?.high ?? Number.NaN);
    expect(sChart([[1], [2]])).toBeNull();
    expect(() => sChart([[1, 2]], { baseline: [1] })).toThrow(RangeError);
  });

  test("meansAsIndividuals says how much narrower limits from within would be", () => {
    const nights = noise(21, 80);
    const samples = nights.map((night, at) => noise(at + 300, 3).map((v) => 2 * night + 0.5 * v));
    const { means, narrowerBy } = meansAsIndividuals(samples);
    expect(means[0]).toLieWithin((samples[0] ?? []).reduce((sum, v) => sum + v, 0) / 3, 1e-12);
    // √(4 + 0.25/3) / √(0.25/3) = 7.0 for the true spreads.
    expect(narrowerBy).toLieWithin(7, 1.5);
    expect(meansAsIndividuals([[], [1]]).means).toEqual([null, 1]);
  });
});
