import { describe, expect, test } from "vitest";
import { companionChange } from "../../../src/analysis/drift/companionChange.ts";
import { type DriftModels, fitDriftModels } from "../../../src/analysis/drift/driftModels.ts";
import { driftShape } from "../../../src/analysis/drift/driftShape.ts";
import { explainDrift } from "../../../src/analysis/drift/explainDrift.ts";
import { seasonEffect } from "../../../src/analysis/drift/seasonEffect.ts";
import { isFitFault, sayFitFault } from "../../../src/analysis/fitFault.ts";
import { creeping, scattered, unevenDays } from "./series.ts";

const days = unevenDays(60);
const last = days[59] as number;
const onset = 150;

function modelsOf(values: Float64Array): DriftModels {
  const models = fitDriftModels({ days, values });
  if (isFitFault(models)) throw new Error(sayFitFault(models));
  return models;
}

const drift = scattered(creeping(days, 0.1, onset, 0.015), 0.2);
const moved = 0.015 * (last - onset);
const ambient = days.map((day) => 8 + 9 * Math.sin((2 * Math.PI * day) / 110));

describe("explainDrift(series, models, measures)", () => {
  test("sizes what moved with the drift, and shows what did not", () => {
    const swing = scattered(creeping(days, 3.4, onset, 0.01), 0.15, 5);
    const rise = scattered(new Float64Array(60).fill(25), 1.5, 6);
    const models = modelsOf(drift);
    const evidence = explainDrift({ days, values: drift }, models, {
      companions: [
        { name: "swing", values: Array.from(swing, (value, at) => (at % 7 === 0 ? null : value)) },
        { name: "rise", values: Array.from(rise) },
        { name: "rare", values: Array.from(rise, (value, at) => (at < 5 ? value : null)) },
      ],
      seasons: [{ name: "ambient", values: ambient }],
    });
    expect(evidence.against).toBe("creep");
    expect(evidence.offsetChange?.low).toBeLessThan(moved);
    expect(evidence.offsetChange?.high).toBeGreaterThan(moved);
    const [grown, same, rare] = evidence.companions.map(({ found }) => found);
    if (!grown || !same || isFitFault(grown) || isFitFault(same)) throw new Error("no fit");
    expect(grown.loads).toBe(51);
    expect(grown.change.low).toBeGreaterThan(0);
    expect(grown.change.low).toBeLessThan(0.01 * (last - onset));
    expect(grown.change.high).toBeGreaterThan(0.01 * (last - onset));
    expect(grown.before.estimate).toLieWithin(3.4, 0.1);
    expect(same.change.low).toBeLessThan(0);
    expect(same.change.high).toBeGreaterThan(0);
    expect(rare && isFitFault(rare) && sayFitFault(rare)).toMatch(/needs 8 .* there are 5/);
    const season = evidence.seasons[0]?.found;
    if (!season || isFitFault(season) || !season.isApart) throw new Error("not told");
    expect(season.perUnit.low).toBeLessThan(0);
    expect(season.perUnit.high).toBeGreaterThan(0);
    expect(season.drift.low).toBeGreaterThan(0);
    expect(season.bic.drift).toBeLessThan(season.bic.season);
  });

  test("an interval of 95 % holds a companion that did not move in about 95 of 100", () => {
    const shape = driftShape(modelsOf(drift)).values;
    let held = 0;
    for (let seed = 1; seed <= 400; seed += 1) {
      const found = companionChange(Array.from(scattered(new Float64Array(60), 1, 1000 + seed)), shape);
      if (!isFitFault(found) && found.change.low <= 0 && 0 <= found.change.high) held += 1;
    }
    // Binomial with 95 %: 366 to 393 of 400 in 99.8 of 100 such studies.
    expect(held).toBeGreaterThanOrEqual(366);
    expect(held).toBeLessThanOrEqual(393);
  });
});

describe("companionChange(values, shape, beside)", () => {
  const shape = driftShape(modelsOf(drift)).values;
  const season = days.map((day) => 8 + 9 * Math.sin((2 * Math.PI * day) / 250));

  test("parts what moved with the drift from what the air outside does, and gives the level at its mean", () => {
    const air = { name: "air", values: Array.from(season) };
    const meanAir = season.reduce((sum, celsius) => sum + celsius, 0) / season.length;
    for (const moves of [0, -0.3]) {
      const truth = season.map((celsius, at) => 1 + 0.04 * (celsius - meanAir) + moves * (shape[at] as number));
      const found = companionChange(Array.from(scattered(truth, 0.05, 7)), shape, air);
      if (isFitFault(found)) throw new Error(sayFitFault(found));
      expect(found.change.low).toBeLessThan(moves);
      expect(found.change.high).toBeGreaterThan(moves);
      expect(found.change.high - found.change.low).toBeLessThan(0.2);
      expect(found.before.estimate).toLieWithin(1, 0.05);
    }
  });

  test("refuses a column beside it of another length", () => {
    const air = { name: "air", values: [1, 2] };
    expect(() => companionChange(Array.from(season), shape, air)).toThrow(/got 2 for 60/);
  });
});

describe("seasonEffect(series, covariate, models)", () => {
  test("an offset that follows ambient temperature is a season, with no drift left beside it", () => {
    const values = scattered(
      ambient.map((celsius) => 0.08 * celsius),
      0.15,
      8,
    );
    const found = seasonEffect({ days, values }, { name: "ambient", values: ambient }, modelsOf(values));
    if (isFitFault(found) || !found.isApart) throw new Error("not told apart");
    expect(found.perUnit.low).toBeLessThan(0.08);
    expect(found.perUnit.high).toBeGreaterThan(0.08);
    expect(found.perUnit.low).toBeGreaterThan(0);
    // The drift beside it is within a tenth of what the season moves.
    expect(Math.abs(found.drift.estimate)).toBeLessThan(0.1 * found.overItsRange.estimate);
    expect(found.bic.season).toBeLessThan(found.bic.drift);
    expect(found.bic.season).toBeLessThan(found.bic.both);
  });

  test("a season alone is given a drift beside it in few of a hundred stretches", () => {
    const slow = days.map((day) => 8 + 9 * Math.sin((2 * Math.PI * day) / 250));
    let [parted, drifts] = [0, 0];
    for (let seed = 1; seed <= 200; seed += 1) {
      const values = scattered(
        slow.map((celsius) => 0.08 * celsius),
        0.3,
        seed,
      );
      const found = seasonEffect({ days, values }, { name: "ambient", values: slow }, modelsOf(values));
      if (isFitFault(found) || !found.isApart) continue;
      parted += 1;
      if (found.drift.low > 0 || found.drift.high < 0) drifts += 1;
    }
    expect(parted).toBeGreaterThan(150);
    // 5 in 100 by chance, and those where the models make a change of nothing.
    expect(drifts / parted).toBeLessThan(0.2);
  });

  test("drift and season together are parted where the season turned meanwhile", () => {
    const values = drift.map((value, at) => value + 0.08 * (ambient[at] as number));
    const found = seasonEffect({ days, values }, { name: "ambient", values: ambient }, modelsOf(values));
    if (isFitFault(found) || !found.isApart) throw new Error("not told apart");
    expect(found.perUnit.low).toBeLessThan(0.08);
    expect(found.perUnit.high).toBeGreaterThan(0.08);
    expect(found.drift.low).toBeGreaterThan(0.5 * moved);
    expect(found.bic.both).toBeLessThan(Math.min(found.bic.season, found.bic.drift));
  });

  test("a covariate that took the drift's own course is not parted from it", () => {
    const cooling = scattered(creeping(days, 15, onset, -0.1), 0.3, 12);
    const found = seasonEffect({ days, values: drift }, { name: "ambient", values: cooling }, modelsOf(drift));
    if (isFitFault(found)) throw new Error(sayFitFault(found));
    expect(found.isApart).toBe(false);
    expect(found.varianceInflation).toBeGreaterThanOrEqual(10);
  });

  test("says that a covariate which did not vary tells nothing", () => {
    const found = seasonEffect(
      { days, values: drift },
      { name: "duty", values: new Float64Array(60).fill(0.4) },
      modelsOf(drift),
    );
    expect(isFitFault(found) && sayFitFault(found)).toMatch(/same duty/);
  });
});
