import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { chartSeries } from "../../src/analysis/controlCharts/chartSeries.ts";
import { cusum } from "../../src/analysis/controlCharts/cusum.ts";
import { ewma } from "../../src/analysis/controlCharts/ewma.ts";
import { firstOrderResiduals, neighboursAreRelated } from "../../src/analysis/controlCharts/firstOrderResiduals.ts";
import { individualsLimits } from "../../src/analysis/controlCharts/individualsLimits.ts";
import { movingRangeChart } from "../../src/analysis/controlCharts/movingRangeChart.ts";
import { movingRangeSpread } from "../../src/analysis/controlCharts/movingRangeSpread.ts";
import { sChart } from "../../src/analysis/controlCharts/sChart.ts";

// NIST/SEMATECH e-Handbook of Statistical Methods, read through second copies: reference/handbook.json.
const handbook = JSON.parse(readFileSync(new URL("reference/handbook.json", import.meta.url), "utf8"));

test("individualsLimits gives the handbook's individuals example, 6.3.2.2", () => {
  const example = handbook.individuals_6_3_2_2;
  const limits = individualsLimits(example.x);
  expect(limits?.centre.estimate).toAgreeWithin(example.mean, 1e-14);
  expect(limits?.spread.averageMovingRange).toLieWithin(example.mrBar, 5e-5);
  // The page divides by 1.128; with d₂ = 2/√π the limits lie 0.0017 further in. Both are asserted.
  expect(limits?.high.estimate).toLieWithin(example.UCL, 0.002);
  expect(limits?.low.estimate).toLieWithin(example.LCL, 0.002);
  const rounded = (limits?.sigma.estimate ?? Number.NaN) * (2 / Math.sqrt(Math.PI) / example.d2);
  expect(example.mean + 3 * rounded).toLieWithin(example.UCL, 5e-5);
  expect(example.mean - 3 * rounded).toLieWithin(example.LCL, 5e-5);
});

test("movingRangeChart gives D4 times the average range for that example", () => {
  const { x, mrUCL_D4_3_267 } = handbook.individuals_6_3_2_2;
  const spread = movingRangeSpread([x]);
  if (spread === null) throw new Error("ten values have a spread");
  const chart = movingRangeChart(
    x,
    x.map(() => "only"),
    spread,
  );
  // Computed with the printed D4 of 3.267; exactly it is 3.26653.
  expect(chart.high).toLieWithin(mrUCL_D4_3_267, 0.001);
  expect(chart.ranges[1]).toLieWithin(2, 1e-13);
  expect(chart.ranges[0]).toBeNull();
});

test("ewma gives the handbook's example, 6.3.2.4, with level limits", () => {
  const example = handbook.ewma_6_3_2_4;
  const series = chartSeries(example.x, example.ewma0, example.s);
  const chart = ewma(series, { weight: example.lam, limit: example.L, steady: true });
  // Printed to two decimals, each worked on from the rounded one before it.
  example.ewma.forEach((printed: number, at: number) => {
    expect(example.ewma0 + (chart.means[at] as number)).toLieWithin(printed, 0.0101);
  });
  expect(example.ewma0 + (chart.reach[0] as number)).toLieWithin(example.UCL, 1e-4);
  // NIST cuts 47.41157 off where it prints the lower limit.
  expect(example.ewma0 - (chart.reach[19] as number)).toLieWithin(example.LCL, 1.1e-4);
  expect(chart.signals).toEqual([]);
});

test("ewma widens its limits as the exact variance does", () => {
  // Half-widths for that example, computed from σ √(λ/(2 − λ) (1 − (1 − λ)^2t)) in R.
  const example = handbook.ewma_6_3_2_4;
  const { reach } = ewma(chartSeries(example.x, example.ewma0, example.s), { weight: example.lam, limit: example.L });
  [1.84851, 2.25639, 2.43141, 2.51272, 2.55162].forEach((expected, at) => {
    expect(reach[at]).toLieWithin(expected, 1e-5);
  });
});

test("cusum gives the handbook's example, 6.3.2.3, and signals first at the fourteenth", () => {
  // Target, k, h and first signal read in a second copy; the data from memory of the page.
  const example = handbook.cusum_6_3_2_3;
  const chart = cusum(chartSeries(example.x, example.mu0, 1), { reference: example.k, decision: example.h });
  example.Shi.forEach((sum: number, at: number) => {
    expect(chart.upper[at]).toLieWithin(sum, 1e-9);
    expect(chart.lower[at]).toLieWithin(example.Slo[at], 1e-9);
  });
  expect(chart.signals).toHaveLength(1);
  const [signal] = chart.signals;
  expect(signal?.raisedAt).toBe(example.firstSignal - 1);
  // The upper sum last stood at 0 at the twelfth: the shift is put at the thirteenth. Size: k + sum / number of runs.
  expect(signal?.from).toBe(12);
  expect(signal?.to).toBe(19);
  expect(signal?.size).toLieWithin(example.k + 19.035 / 8, 1e-9);
});

test("sChart with equal samples gives B3, B4 and s-bar / c4", () => {
  // Five samples a batch: B4 = 2.089, B3 = 0, c4 = 0.9400 (Montgomery, Appendix VI; from memory, and in the table of Dataplot).
  const samples = [
    [4.1, 4.3, 4.0, 4.6, 4.2],
    [4.4, 4.4, 4.1, 4.0, 4.5],
    [3.9, 4.2, 4.2, 4.1, 4.3],
  ];
  const spreads = samples.map((batch) => {
    const mean = batch.reduce((sum, value) => sum + value, 0) / 5;
    return Math.sqrt(batch.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 4);
  });
  const average = spreads.reduce((sum, value) => sum + value, 0) / 3;
  const chart = sChart(samples);
  expect(chart?.sigma).toAgreeWithin(average / 0.94, 5e-5);
  expect(chart?.points[0]?.high).toAgreeWithin(2.089 * average, 3e-4);
  expect(chart?.points[0]?.low).toBe(0);
  expect(chart?.points[0]?.centre).toAgreeWithin(average, 1e-13);
});

test("firstOrderResiduals takes out NIST's certified lag-1 autocorrelation of Lew and Lottery", () => {
  // NIST StRD univariate sets: Lew r = −0.307, 200 values; Lottery r = −0.121, 218 values.
  const read = (name: string) => JSON.parse(readFileSync(new URL(`reference/${name}.json`, import.meta.url), "utf8"));
  for (const name of ["Lew", "Lottery"]) {
    const { y, certified } = read(name);
    const deviations: number[] = y.map((value: number) => value - certified.mean);
    const { coefficient, residuals } = firstOrderResiduals(deviations);
    expect(coefficient.estimate).toAgreeWithin(certified.lag1, 1e-11);
    expect(residuals[1]).toLieWithin((deviations[1] as number) - certified.lag1 * (deviations[0] as number), 1e-8);
  }
  expect(neighboursAreRelated(read("Lew").y)).toBe(true);
});
