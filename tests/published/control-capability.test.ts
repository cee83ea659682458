import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { capabilityIndices, expectedShareOutside } from "../../src/analysis/controlCharts/capability.ts";
import { normalProbabilityPlot } from "../../src/analysis/normalProbabilityPlot.ts";
import { skewnessTest } from "../../src/analysis/skewness.ts";

const PROBPLOT = {
  quantiles: [
    -1.4987672753589756, -0.9849466741389483, -0.6470380273640686, -0.371098189575024, -0.12121408713229873,
    0.12121408713229859, 0.371098189575024, 0.6470380273640689, 0.9849466741389483, 1.4987672753589756,
  ],
  r: 0.9742438533549859,
};

const handbook = JSON.parse(readFileSync(new URL("reference/handbook.json", import.meta.url), "utf8"));

test("capabilityIndices gives the handbook's example, 6.1.6", () => {
  const { USL, LSL, mean, s, Cp, Cpk, Cpu, Cpl } = handbook.capability_6_1_6;
  const indices = capabilityIndices({ count: 50, mean, standardDeviation: s }, { low: LSL, high: USL });
  expect(indices.cp?.estimate).toAgreeWithin(Cp, 1e-15);
  expect(indices.cpk.estimate).toLieWithin(Cpk, 5e-5);
  expect(indices.cpkHigh).toLieWithin(Cpu, 5e-5);
  expect(indices.cpkLow).toLieWithin(Cpl, 5e-5);
});

test.each([
  { count: 20, reach: 0.257431, low133: 0.882606, high133: 1.777394 },
  { count: 30, reach: 0.20896, low133: 0.967529, high133: 1.692471 },
  { count: 50, reach: 0.161115, low133: 1.050939, high133: 1.609061 },
  { count: 100, reach: 0.113539, low133: 1.133564, high133: 1.526436 },
])("Cpk's interval is Bissell's for $count values", ({ count, reach, low133, high133 }) => {
  // Bissell (1990), Applied Statistics 39, 331–340, formula as in e-Handbook 6.1.6; values computed from it in R.
  const twoThirds = capabilityIndices({ count, mean: 16, standardDeviation: 2 }, { low: 8, high: 20 }).cpk;
  expect(twoThirds.high - twoThirds.estimate).toLieWithin(reach, 6e-7);
  expect(twoThirds.estimate - twoThirds.low).toLieWithin(reach, 6e-7);
  const oneSided = capabilityIndices({ count, mean: 0, standardDeviation: 1 }, { low: null, high: 3 * 1.33 }).cpk;
  expect(oneSided.low).toLieWithin(low133, 6e-7);
  expect(oneSided.high).toLieWithin(high133, 6e-7);
});

test("Cp's interval is Montgomery's for Cp 2.29 from 20 values", () => {
  // Introduction to Statistical Quality Control, chapter 8 example: 1.57 to 3.01, from memory; R: 1.567879 to 3.011215.
  const { cp } = capabilityIndices({ count: 20, mean: 0, standardDeviation: 1 }, { low: -6.87, high: 6.87 });
  expect(cp?.estimate).toAgreeWithin(2.29, 1e-14);
  expect(cp?.low).toLieWithin(1.567879, 6e-7);
  expect(cp?.high).toLieWithin(3.011215, 6e-7);
});

test("expectedShareOutside is the t tail, and for one end has the noncentral t interval", () => {
  // SciPy 1.17: t.sf(2/√1.1, 9); and the shares whose noncentral t puts a mean 2 s below the end, n 10, at 2.5 and 97.5 %:
  // the exact interval. Ours is read off 2,560 equally likely pairs.
  const share = expectedShareOutside({ count: 10, mean: 0, standardDeviation: 1 }, { low: null, high: 2 });
  expect(share.estimate).toAgreeWithin(0.044448966230539594, 1e-12);
  expect(share.low).toAgreeWithin(0.0010235452397179636, 0.03);
  expect(share.high).toAgreeWithin(0.1883747442203495, 0.01);
});

test.each([
  { values: [2, 8, 0, 4, 1, 9, 9, 0], z: 0.44626385374196975, p: 0.6554066631275459 },
  { values: [1, 2, 3, 4, 5, 6, 7, 8000], z: 3.571773510360407, p: 0.0003545719905823133 },
  { values: [100, 100, 100, 100, 100, 100, 100, 101], z: 3.5717766638478072, p: 0.000354567720281634 },
])("skewnessTest gives SciPy's documented example $values", ({ values, z, p }) => {
  // https://docs.scipy.org/doc/scipy/reference/generated/scipy.stats.skewtest.html, read.
  expect(skewnessTest(values)?.z).toAgreeWithin(z, 1e-12);
  expect(skewnessTest(values)?.p).toAgreeWithin(p, 1e-11);
});

test("normalProbabilityPlot agrees with SciPy's probplot on the data of the handbook's individuals example", () => {
  // scipy.stats.probplot, SciPy 1.17 (Filliben's positions): ordered quantiles and correlation r of the 10 values.
  const { x } = handbook.individuals_6_3_2_2;
  const plot = normalProbabilityPlot(x);
  PROBPLOT.quantiles.forEach((quantile, at) => {
    expect(plot.quantiles[at]).toLieWithin(quantile, 1e-12);
  });
  expect(plot.correlation).toAgreeWithin(PROBPLOT.r, 1e-12);
  expect([...plot.values]).toEqual([...x].sort((a: number, b: number) => a - b));
});
