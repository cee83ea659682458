import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalDraws } from "../../../src/analysis/normalDraws.ts";
import { type SeededRandom, seededRandom } from "../../../src/analysis/seededRandom.ts";
import { fitGrowth, type GrowthCount } from "../../../src/malting/germination/growthFit.ts";

const TRUTH = { base: 3, ratePerDegreeHour: 0.0007, lag: 0.06 };

interface House {
  readonly runs: number;
  readonly perBatch: number;
  readonly hours: readonly number[];
  readonly countingError: number;
}

/** Batches of two varieties, one 4 % faster than the other, about the true rate; each with a rate of its own. */
function grow(random: SeededRandom, { runs, perBatch, hours, countingError }: House): GrowthCount[] {
  const normal = normalDraws(random);
  return Array.from({ length: runs }, (_, run) => {
    const celsius = 15 + 1.2 * normal();
    const variety = run % 2 === 0 ? "one" : "other";
    const own = (run % 2 === 0 ? 1.02 : 0.98) * (1 + perBatch * normal());
    return hours.map((at) => ({
      run: String(run),
      variety,
      hours: at,
      celsius,
      length: TRUTH.ratePerDegreeHour * own * (celsius - TRUTH.base) * at - TRUTH.lag + countingError * normal(),
      standardError: countingError,
    }));
  }).flat();
}

const inside = ({ low, high }: { readonly low: number; readonly high: number }, truth: number): boolean =>
  low <= truth && truth <= high;

const fitted = (counts: readonly GrowthCount[]): NonNullable<ReturnType<typeof fitGrowth>> => {
  const fit = fitGrowth(counts);
  if (fit === null) throw new Error("no growth could be fitted");
  return fit;
};

describe("fitGrowth(counts)", () => {
  test("recovers base, rate and lag of counts without error", () => {
    const hours = [40, 64, 96];
    const counts = [11, 12.5, 14, 15, 16.5, 18].flatMap((celsius, run) =>
      hours.map((at) => ({
        run: String(run),
        variety: "one",
        hours: at,
        celsius,
        length: TRUTH.ratePerDegreeHour * (celsius - TRUTH.base) * at - TRUTH.lag,
        standardError: 0.02,
      })),
    );
    const fit = fitted(counts);
    expect(fit.baseCelsius.estimate).toLieWithin(TRUTH.base, 1e-6);
    expect(fit.lengthPerHundredDegreeHours.estimate).toAgreeWithin(100 * TRUTH.ratePerDegreeHour, 1e-6);
    expect(fit.lag.estimate).toLieWithin(TRUTH.lag, 1e-6);
    expect(fit.lengthAt(14, 80).estimate).toLieWithin(TRUTH.ratePerDegreeHour * 11 * 80 - TRUTH.lag, 1e-6);
    expect(fit.hoursTo(0.75, 15)?.estimate).toAgreeWithin((0.75 + TRUTH.lag) / (TRUTH.ratePerDegreeHour * 12), 1e-6);
  });

  test("holds the truth in its 95 % intervals about as often as it says", () => {
    const house = { runs: 24, perBatch: 0.035, hours: [40, 64, 96], countingError: 0.018 };
    const random = seededRandom(1);
    const held = { base: 0, rate: 0, lag: 0, hours: 0 };
    const houses = 400;
    const truly = (0.75 + TRUTH.lag) / (TRUTH.ratePerDegreeHour * (14 - TRUTH.base));
    for (let i = 0; i < houses; i += 1) {
      const fit = fitted(grow(random, house));
      if (inside(fit.baseCelsius, TRUTH.base)) held.base += 1;
      if (inside(fit.lengthPerHundredDegreeHours, 100 * TRUTH.ratePerDegreeHour)) held.rate += 1;
      if (inside(fit.lag, TRUTH.lag)) held.lag += 1;
      const hours = fit.hoursTo(0.75, 14);
      if (hours !== null && inside(hours, truly)) held.hours += 1;
    }
    // Three standard errors of a share of 0.95 in 400 are 0.033.
    for (const times of Object.values(held)) expect(times / houses).toLieWithin(0.95, 0.033);
  });

  test("does not take ten counts of one batch for ten batches", () => {
    const often = [30, 38, 46, 54, 62, 70, 78, 86, 94];
    const width = (hours: readonly number[]): number => {
      const house = { runs: 20, perBatch: 0.05, hours, countingError: 0.015 };
      const { low, high } = fitted(grow(seededRandom(5), house)).baseCelsius;
      return high - low;
    };
    expect(width(often)).toBeGreaterThan(0.6 * width([30, 62, 94]));
  });

  test("shifts its base with the thermometer's zero and nothing else", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1000 }), fc.double({ min: -5, max: 5, noNaN: true }), (seed, shift) => {
        const house = { runs: 14, perBatch: 0.03, hours: [45, 70, 96], countingError: 0.015 };
        const counts = grow(seededRandom(seed), house);
        const own = fitted(counts);
        const moved = fitted(counts.map((count) => ({ ...count, celsius: count.celsius + shift })));
        expect(moved.baseCelsius.estimate).toLieWithin(own.baseCelsius.estimate + shift, 1e-5);
        expect(moved.baseCelsius.low).toLieWithin(own.baseCelsius.low + shift, 1e-4);
        expect(moved.lag.estimate).toLieWithin(own.lag.estimate, 1e-7);
      }),
      { numRuns: 20 },
    );
  });

  test("tells no base where warmth makes no difference, nor from batches that all lay equally warm", () => {
    const random = seededRandom(2);
    const normal = normalDraws(random);
    const house = { runs: 20, perBatch: 0.03, hours: [45, 96], countingError: 0.015 };
    const indifferent = grow(random, house).map((count) => ({
      ...count,
      length: 0.008 * count.hours - 0.06 + 0.015 * normal(),
    }));
    expect(fitGrowth(indifferent)).toBeNull();
    expect(fitGrowth(grow(random, house).map((count) => ({ ...count, celsius: 15 })))).toBeNull();
    expect(fitGrowth(grow(random, { ...house, runs: 3 }))).toBeNull();
    expect(fitGrowth([])).toBeNull();
  });
});
