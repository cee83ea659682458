import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type DriftModels, fitDriftModels } from "../../../src/analysis/drift/driftModels.ts";
import type { DriftSeries } from "../../../src/analysis/drift/driftSeries.ts";
import { isFitFault, sayFitFault } from "../../../src/analysis/fitFault.ts";
import { fitLeastSquares } from "../../../src/analysis/fitLeastSquares.ts";
import { creeping, scattered, unevenDays } from "./series.ts";

function modelsOf(series: DriftSeries): DriftModels {
  const models = fitDriftModels(series);
  if (isFitFault(models)) throw new Error(sayFitFault(models));
  return models;
}

function creepOf(models: DriftModels) {
  if (models.creep === null) throw new Error("no creep");
  return models.creep;
}

function stepOf(models: DriftModels) {
  if (models.step === null) throw new Error("no step");
  return models.step;
}

const seeds = fc.integer({ min: 0, max: 100_000 });
const lengths = fc.integer({ min: 8, max: 40 });

describe("fitDriftModels(series)", () => {
  test("recovers an exact creep, its onset between two loads", () => {
    const days = unevenDays(30);
    const models = modelsOf({ days, values: creeping(days, 1.5, 71.3, -0.02) });
    expect(models.winner).toBe("creep");
    const { onsetDay, slopePerDay, levelBefore } = creepOf(models);
    expect(onsetDay.estimate).toLieWithin(71.3, 1e-6);
    expect(slopePerDay.estimate).toAgreeWithin(-0.02, 1e-9);
    expect(levelBefore.estimate).toAgreeWithin(1.5, 1e-9);
  });

  test("recovers an exact step", () => {
    const days = unevenDays(20);
    const models = modelsOf({ days, values: days.map((_, at) => (at < 12 ? 0.25 : -1)) });
    expect(models.winner).toBe("step");
    const { firstAfter, size, levelBefore, levelNow, onsetDay } = stepOf(models);
    expect(firstAfter).toBe(12);
    expect(size.estimate).toAgreeWithin(-1.25, 1e-12);
    expect(levelBefore.estimate).toAgreeWithin(0.25, 1e-12);
    expect(levelNow.estimate).toAgreeWithin(-1, 1e-12);
    expect([onsetDay.low, onsetDay.high]).toEqual([days[11], days[12]]);
  });

  test("one odd load among others is no clear change, wherever it lies short of the last three", () => {
    for (let odd = 0; odd < 21; odd += 1) {
      const values = scattered(new Float64Array(24), 0.4);
      values[odd] = 2.5;
      const { winner, isClear } = modelsOf({ days: unevenDays(24), values });
      expect(winner === "constant" || !isClear).toBe(true);
    }
  });

  test("has, at its onset, the slope and residuals of a least-squares line on the time since then, and no onset does better", () => {
    fc.assert(
      fc.property(seeds, lengths, (seed, count) => {
        const days = unevenDays(count, seed);
        const duty = scattered(new Float64Array(count).fill(0.5), 0.1, seed + 1);
        const values = scattered(creeping(days, 0, days[count >> 1] as number, 0.03), 0.4, seed + 2);
        const covariates = [{ name: "duty", values: duty }];
        if (count < 9) return;
        const creep = creepOf(modelsOf({ days, values, covariates }));
        const line = (onset: number) => {
          const since = { name: "since", values: days.map((day) => Math.max(0, day - onset)) };
          const plain = fitLeastSquares([since, ...covariates], values);
          return {
            slope: plain.terms[1]?.estimate ?? Number.NaN,
            squares: plain.residuals.reduce((sum, e) => sum + e * e, 0),
          };
        };
        const best = line(creep.onsetDay.estimate);
        expect(creep.slopePerDay.estimate).toAgreeWithin(best.slope, 1e-7);
        expect(creep.residualSquares).toAgreeWithin(best.squares, 1e-9);
        const last = days[count - 3] as number;
        for (let place = 0; place <= 20; place += 1) {
          const onset = (days[0] as number) + ((last - (days[0] as number)) * place) / 20;
          expect(line(onset).squares).toBeGreaterThan(creep.residualSquares * (1 - 1e-9));
        }
      }),
      { numRuns: 40 },
    );
  });

  test("shifted values shift levels only; scaled values scale levels, size, slope and residuals", () => {
    fc.assert(
      fc.property(
        seeds,
        lengths,
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: 1, max: 9 }),
        (seed, count, shift, scale) => {
          const days = unevenDays(count, seed);
          const values = scattered(creeping(days, 0, 60, 0.02), 0.4, seed);
          const plain = modelsOf({ days, values });
          const moved = modelsOf({ days, values: values.map((value) => scale * value + shift) });
          expect(moved.winner).toBe(plain.winner);
          expect(moved.margin).toLieWithin(plain.margin, 1e-6);
          const [before, after] = [creepOf(plain), creepOf(moved)];
          expect(after.onsetDay.estimate).toLieWithin(before.onsetDay.estimate, 1e-4);
          expect(after.onsetDay.high).toLieWithin(before.onsetDay.high, 1e-4);
          for (const end of ["estimate", "low", "high"] as const) {
            expect(after.slopePerDay[end]).toLieWithin(scale * before.slopePerDay[end], 1e-6);
            expect(after.levelBefore[end]).toLieWithin(scale * before.levelBefore[end] + shift, 1e-5);
            expect(stepOf(moved).size[end]).toLieWithin(scale * stepOf(plain).size[end], 1e-7);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("days counted from elsewhere and in another unit move the onset and scale the slope, nothing else", () => {
    fc.assert(
      fc.property(
        seeds,
        lengths,
        fc.integer({ min: -20_000, max: 20_000 }),
        fc.integer({ min: 1, max: 24 }),
        (seed, count, shift, scale) => {
          const days = unevenDays(count, seed);
          const values = scattered(creeping(days, 0, 60, 0.02), 0.4, seed);
          const plain = modelsOf({ days, values });
          const moved = modelsOf({ days: days.map((day) => scale * (day + shift)), values });
          expect(moved.scores.map(({ model }) => model)).toEqual(plain.scores.map(({ model }) => model));
          expect(moved.margin).toLieWithin(plain.margin, 1e-6);
          const [before, after] = [creepOf(plain), creepOf(moved)];
          expect(after.onsetDay.estimate / scale - shift).toLieWithin(before.onsetDay.estimate, 1e-4);
          expect(after.slopePerDay.low * scale).toLieWithin(before.slopePerDay.low, 1e-6);
          expect(after.levelNow.high).toLieWithin(before.levelNow.high, 1e-5);
          expect(stepOf(moved).firstAfter).toBe(stepOf(plain).firstAfter);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("a series read backwards has its step mirrored", () => {
    fc.assert(
      fc.property(seeds, lengths, (seed, count) => {
        const days = unevenDays(count, seed);
        const values = scattered(
          days.map((_, at) => (at < count / 2 ? 0 : 1)),
          0.4,
          seed,
        );
        const forward = stepOf(modelsOf({ days, values }));
        const backward = stepOf(
          modelsOf({ days: days.map((day) => -day).reverse(), values: values.slice().reverse() }),
        );
        expect(backward.residualSquares).toAgreeWithin(forward.residualSquares, 1e-9);
        expect(backward.size.estimate).toAgreeWithin(-forward.size.estimate, 1e-9);
        expect(backward.size.high).toAgreeWithin(-forward.size.low, 1e-9);
        expect(backward.firstAfter).toBe(count - forward.firstAfter);
      }),
      { numRuns: 60 },
    );
  });

  test("a load of weight 2 counts as two loads of one day", () => {
    const days = unevenDays(16);
    const values = scattered(creeping(days, 0, 40, 0.05), 0.3);
    const twice = Array.from(days.keys()).flatMap((at) => (at % 3 === 0 ? [at, at] : [at]));
    const weighted = modelsOf({ days, values, weights: days.map((_, at) => (at % 3 === 0 ? 2 : 1)) });
    const repeated = modelsOf({
      days: twice.map((at) => days[at] as number),
      values: twice.map((at) => values[at] as number),
    });
    expect(creepOf(weighted).residualSquares).toAgreeWithin(creepOf(repeated).residualSquares, 1e-10);
    expect(creepOf(weighted).slopePerDay.estimate).toAgreeWithin(creepOf(repeated).slopePerDay.estimate, 1e-9);
    expect(creepOf(weighted).onsetDay.estimate).toLieWithin(creepOf(repeated).onsetDay.estimate, 1e-6);
    expect(weighted.constant.level.estimate).toAgreeWithin(repeated.constant.level.estimate, 1e-12);
  });

  test("a covariate's part is taken out before anything is called a drift", () => {
    const days = unevenDays(40);
    const duty = days.map((day) => 0.5 + 0.2 * Math.sin(day / 9));
    const values = scattered(
      creeping(days, 0, 90, 0.02).map((value, at) => value + 4 * (duty[at] as number)),
      0.1,
    );
    const { slopePerDay, onsetDay } = creepOf(modelsOf({ days, values, covariates: [{ name: "duty", values: duty }] }));
    expect(slopePerDay.low).toBeLessThan(0.02);
    expect(slopePerDay.high).toBeGreaterThan(0.02);
    expect(onsetDay.low).toBeLessThan(90);
    expect(onsetDay.high).toBeGreaterThan(90);
  });

  test("says in a sentence what it lacks", () => {
    const days = unevenDays(7);
    const words = { observations: "loads", response: "offset" };
    const say = (series: DriftSeries) => {
      const found = fitDriftModels(series);
      return isFitFault(found) ? sayFitFault(found, words) : null;
    };
    expect(say({ days, values: scattered(days, 1) })).toBe(
      "The estimate needs 8 loads with all that it uses; so far there are 7.",
    );
    const ten = unevenDays(10);
    expect(say({ days: ten, values: new Float64Array(10).fill(2) })).toBe(
      "All 10 loads have the same offset, so there is nothing to explain.",
    );
    expect(say({ days: new Float64Array(10).fill(3), values: scattered(ten, 1) })).toMatch(/same day/);
    const duty = { name: "duty", values: new Float64Array(10).fill(0.4) };
    expect(say({ days: ten, values: scattered(ten, 1), covariates: [duty] })).toMatch(/same duty/);
  });

  test("refuses what is no series", () => {
    expect(() => fitDriftModels({ days: [1, 0], values: [1, 2] })).toThrow(
      new RangeError("fitDriftModels requires time order; got day 0 after 1"),
    );
    expect(() => fitDriftModels({ days: [1], values: [1, 2] })).toThrow(RangeError);
    expect(() => fitDriftModels({ days: [1, 2], values: [1, Number.NaN] })).toThrow(RangeError);
    expect(() => fitDriftModels({ days: [1, 2], values: [1, 2], weights: [1, 0] })).toThrow(RangeError);
    expect(() => fitDriftModels({ days: [1, 2], values: [1, 2] }, 1)).toThrow(RangeError);
  });
});
