import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chartSeries } from "../../../src/analysis/controlCharts/chartSeries.ts";
import { controlChart } from "../../../src/analysis/controlCharts/controlChart.ts";
import { ewma } from "../../../src/analysis/controlCharts/ewma.ts";
import { falseSignalRunLength } from "../../../src/analysis/controlCharts/falseSignalRunLength.ts";
import { individualsLimits } from "../../../src/analysis/controlCharts/individualsLimits.ts";
import { allRules, ruleChoice } from "../../../src/analysis/controlCharts/ruleChoice.ts";
import { runLength } from "../../../src/analysis/controlCharts/runLength.ts";
import {
  chanceOfNoSignal,
  runLengthQuantile,
  signalCountChances,
  signalCountQuantile,
} from "../../../src/analysis/controlCharts/runLengthDistribution.ts";
import { runRuleSignals } from "../../../src/analysis/controlCharts/runRules.ts";
import type { RuleName } from "../../../src/analysis/controlCharts/signal.ts";
import { simulatedRunLength } from "../../../src/analysis/controlCharts/simulatedRunLength.ts";
import { normalQuantile } from "../../../src/analysis/distributions.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";

const known = { shift: 0, spread: 1 };

describe("a distribution without memory", () => {
  const { distribution } = runLength(ruleChoice(["beyondLimits"]));
  const p = 1 / distribution.mean;

  test("is geometric", () => {
    for (const runs of [0, 1, 7, 100, 5000]) {
      expect(chanceOfNoSignal(distribution, runs)).toAgreeWithin((1 - p) ** runs, 1e-9);
    }
    expect(runLengthQuantile(distribution, 0.95)).toBe(Math.ceil(Math.log(0.05) / Math.log(1 - p)));
    expect(runLengthQuantile(distribution, 0.001)).toBe(1);
  });

  test("gives binomial counts of signals", () => {
    const chances = signalCountChances(distribution, 200);
    expect(chances[0]).toAgreeWithin((1 - p) ** 200, 1e-9);
    expect(chances[1]).toAgreeWithin(200 * p * (1 - p) ** 199, 1e-9);
    // Binomial(200, 0.0027): P(≤ 1) = 0.898, P(≤ 2) = 0.982.
    expect(signalCountQuantile(distribution, 200, 0.95)).toBe(2);
  });
});

describe("any distribution", () => {
  const subsets = fc.subarray(["beyondLimits", "eightOnOneSide", "sixRisingOrFalling"] as RuleName[], { minLength: 1 });

  test("falls from 1, sums to its mean, and its quantile is where the chance is passed", () => {
    const shift = fc.integer({ min: 0, max: 20 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(subsets, shift, fc.constantFrom(0.05, 0.5, 0.95), (rules, size, p) => {
        const { distribution } = runLength(ruleChoice(rules), { shift: size, spread: 1 });
        let sum = 0;
        for (let runs = 0; runs < 8000; runs += 1) sum += chanceOfNoSignal(distribution, runs);
        expect(sum).toAgreeWithin(distribution.mean, 1e-6);
        const quantile = runLengthQuantile(distribution, p);
        expect(chanceOfNoSignal(distribution, quantile)).toBeLessThanOrEqual(1 - p + 1e-12);
        expect(chanceOfNoSignal(distribution, quantile - 1)).toBeGreaterThan(1 - p - 1e-12);
      }),
      { numRuns: 30 },
    );
  });

  test("a further rule never lengthens it, a shift up is a shift down", () => {
    const rules = fc.subarray(
      [...allRules].filter((rule) => rule !== "cumulativeSum"),
      { minLength: 1 },
    );
    fc.assert(
      fc.property(rules, (chosen) => {
        // Simulated mixtures carry an error of their own; the exact ones are compared.
        const choice = ruleChoice(chosen);
        const result = runLength(choice, { shift: 0.7, spread: 1 });
        fc.pre(result.method !== "simulation");
        const mirrored = runLength(choice, { shift: -0.7, spread: 1 }).distribution.mean;
        expect(mirrored).toAgreeWithin(result.distribution.mean, 1e-9);
        for (const rule of chosen) {
          if (chosen.length === 1) continue;
          const fewer = runLength(ruleChoice(chosen.filter((other) => other !== rule)), { shift: 0.7, spread: 1 });
          // 1.001: the weighted mean's equation with zone rules is good to about 1 part in 1,000.
          expect(result.distribution.mean).toBeLessThan(fewer.distribution.mean * 1.001);
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe("chains and equations against seeded histories", () => {
  test.each<{ rules: RuleName[]; shift: number }>([
    { rules: ["beyondLimits", "weightedMean"], shift: 0 },
    { rules: ["beyondLimits", "weightedMean"], shift: 1 },
    { rules: ["beyondLimits", "weightedMean", "eightOnOneSide"], shift: 0 },
    { rules: ["beyondLimits", "eightOnOneSide", "sixRisingOrFalling"], shift: 0 },
    { rules: ["twoOfThreeBeyondTwoThirds", "fourOfFiveBeyondOneThird", "sixRisingOrFalling"], shift: 0.5 },
    { rules: ["cumulativeSum"], shift: 0 },
    { rules: ["cumulativeSum"], shift: 1 },
  ])("$rules at a shift of $shift", ({ rules, shift }) => {
    const choice = ruleChoice(rules);
    const at = { shift, spread: 1 };
    const exact = runLength(choice, at);
    expect(exact.method).not.toBe("simulation");
    const simulated = simulatedRunLength(choice, at);
    expect(exact.distribution.mean).toLieWithin(simulated.distribution.mean, 3.5 * simulated.standardError);
    // 10,000 histories: the share that outlasts the exact 90 % point is 0.1 within 0.009 (3 standard errors).
    const late = runLengthQuantile(exact.distribution, 0.9);
    expect(chanceOfNoSignal(simulated.distribution, late)).toLieWithin(
      chanceOfNoSignal(exact.distribution, late),
      0.01,
    );
  });
});

test("the rules as charted signal as often as their chains say", () => {
  // 400,000 seeded normal values; each history starts afresh after a signal, as the chain does.
  const random = seededRandom(7);
  const rules = ["beyondLimits", "eightOnOneSide", "fourOfFiveBeyondOneThird", "sixRisingOrFalling"] as const;
  const lengths: number[] = [];
  let values: number[] = [];
  const draw = () => normalQuantile((random.bits() + 0.5) / 4294967296);
  while (lengths.length < 1500) {
    while (values.length < 1200) values.push(draw());
    const series = chartSeries(values, 0, 1);
    const first = Math.min(
      ...rules.map((rule) => runRuleSignals(series, rule)[0]?.raisedAt ?? 1199),
      ewma(series).signals[0]?.raisedAt ?? 1199,
    );
    lengths.push(first + 1);
    values = values.slice(first + 1);
  }
  const mean = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
  const expected = runLength(ruleChoice([...rules, "weightedMean"]));
  const error = mean / Math.sqrt(lengths.length) + expected.standardError;
  expect(mean).toLieWithin(expected.distribution.mean, 3.5 * error);
});

describe("falseSignalRunLength", () => {
  test.each<{ rules: RuleName[] }>([
    { rules: ["beyondLimits", "weightedMean"] },
    { rules: ["cumulativeSum"] },
    { rules: ["beyondLimits", "eightOnOneSide"] },
    { rules: [...allRules] },
  ])("of $rules: a larger baseline narrows the range about the known value", ({ rules }) => {
    const few = falseSignalRunLength(ruleChoice(rules), 12);
    const many = falseSignalRunLength(ruleChoice(rules), 200);
    expect(few.low).toBeLessThan(many.low);
    expect(many.high).toBeLessThan(few.high);
    expect(many.low).toBeLessThan(many.known.distribution.mean);
    // An error of the centre only ever shortens run lengths, so the upper end may fall short of the known value a little.
    expect(many.high).toBeGreaterThan(0.95 * many.known.distribution.mean);
  });

  test.each<{ rules: RuleName[]; baseline: number }>([
    { rules: ["beyondLimits", "weightedMean"], baseline: 24 },
    { rules: ["beyondLimits", "eightOnOneSide", "twoOfThreeBeyondTwoThirds"], baseline: 15 },
  ])("of $rules holds nine in ten of the run lengths of simulated baselines of $baseline", ({ rules, baseline }) => {
    // 300 seeded baselines of normal values, each with its own mean and average moving range: 0.05 of their run lengths lie
    // beyond either end, within 3 standard errors of 0.0126.
    const random = seededRandom(5);
    const choice = ruleChoice(rules);
    const range = falseSignalRunLength(choice, baseline);
    expect(range.rangeIsScaled).toBe(false);
    let shorter = 0;
    let longer = 0;
    for (let round = 0; round < 300; round += 1) {
      const values = Array.from({ length: baseline }, () => normalQuantile((random.bits() + 0.5) / 4294967296));
      const limits = individualsLimits(values);
      if (limits === null) throw new Error("drawn values vary");
      const sigma = limits.sigma.estimate;
      const at = { shift: -limits.centre.estimate / sigma, spread: 1 / sigma };
      const { mean } = runLength(choice, at).distribution;
      if (mean < range.low) shorter += 1;
      if (mean > range.high) longer += 1;
    }
    expect(shorter / 300).toLieWithin(0.05, 0.038);
    expect(longer / 300).toLieWithin(0.05, 0.038);
  });

  test("a trend alone does not mind where limits lie", () => {
    const { low, high, known: value } = falseSignalRunLength(ruleChoice(["sixRisingOrFalling"]), 24);
    expect(low).toAgreeWithin(value.distribution.mean, 1e-8);
    expect(high).toAgreeWithin(value.distribution.mean, 1e-8);
  });

  test("pooling the spread of three varieties narrows the range", () => {
    const alone = falseSignalRunLength(ruleChoice(), 12);
    const pooled = falseSignalRunLength(ruleChoice(), { centreCount: 12, seriesCounts: [12, 12, 12] });
    expect(pooled.low).toBeGreaterThan(alone.low);
    expect(pooled.high).toBeLessThan(alone.high);
  });

  test("refuses a baseline of one", () => {
    expect(() => falseSignalRunLength(ruleChoice(), 1)).toThrow(RangeError);
    expect(() => runLength(ruleChoice(), { shift: 0, spread: 0 })).toThrow(RangeError);
    expect(() => ruleChoice([])).toThrow(RangeError);
  });
});

test("controlChart on a quiet series signals about as often as expected there", () => {
  // 200 seeded houses of 100 runs with frozen limits known to 24 runs: signals vary more than with known limits, and
  // their average lies between the rates at the two ends of the range.
  const random = seededRandom(11);
  const choice = ruleChoice();
  let signals = 0;
  for (let house = 0; house < 200; house += 1) {
    const points = Array.from({ length: 124 }, () => ({
      value: normalQuantile((random.bits() + 0.5) / 4294967296),
      group: "only",
    }));
    const chart = controlChart(points, choice);
    signals += chart.signals.filter(({ raisedAt }) => raisedAt >= 24).length;
  }
  const { low, high } = falseSignalRunLength(choice, 24);
  expect(signals / 200).toBeGreaterThan(100 / high);
  expect(signals / 200).toBeLessThan(100 / low);
  expect(signals / 200).toBeGreaterThan(100 / runLength(choice, known).distribution.mean / 2);
});
