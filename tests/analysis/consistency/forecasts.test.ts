import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dragOf, foretell, type ScaledLimits, type Seen } from "../../../src/analysis/consistency/consistency.ts";
import { together } from "../../../src/analysis/consistency/lotBootstrap.ts";
import { PairSums } from "../../../src/analysis/consistency/pairSums.ts";
import { correlationFactor, pooledCorrelation } from "../../../src/analysis/consistency/pooledCorrelation.ts";
import { spreadOfStep } from "../../../src/analysis/consistency/predictiveMargin.ts";
import { POOLED_WEIGHT, shrinkSpread } from "../../../src/analysis/consistency/shrunkSpread.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { mean, sampleStandardDeviation } from "../../../src/analysis/summary.ts";
import { gaussian } from "../gaussian.ts";

const noOthers = { squares: 0, degreesOfFreedom: 0 };
const seenIn = (values: readonly number[]): Seen => ({
  count: values.length,
  mean: mean(values),
  squares: (values.length - 1) * sampleStandardDeviation(values) ** 2,
});
const within = (low: number, target: number, high: number, leastSpread = 0): ScaledLimits => ({
  low,
  high,
  below: target - low,
  above: high - target,
  leastSpread,
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Two measures of a variety that vary, with the squares of others. */
const variety = fc.record({
  one: fc.array(number(-5, 5), { minLength: 5, maxLength: 15 }).filter((list) => sampleStandardDeviation(list) > 0.1),
  other: fc.array(number(-5, 5), { minLength: 5, maxLength: 15 }).filter((list) => sampleStandardDeviation(list) > 0.1),
  squares: number(1, 100),
  degreesOfFreedom: fc.integer({ min: 0, max: 40 }),
  r: number(-0.9, 0.9),
});
const factor = (r: number): Float64Array =>
  correlationFactor({ matrix: Float64Array.of(1, r, r, 1), shrunkBy: 0 }, [0, 1]);

describe("shrinkSpread(own, others)", () => {
  it("is the own variance where nobody else has scattered, and the pooled one where the variety has not", () => {
    expect(shrinkSpread({ squares: 12, degreesOfFreedom: 6 }, noOthers)).toEqual({ variance: 2, degreesOfFreedom: 6 });
    const pooled = shrinkSpread({ squares: 0, degreesOfFreedom: 0 }, { squares: 90, degreesOfFreedom: 30 });
    expect(pooled).toEqual({ variance: 3, degreesOfFreedom: POOLED_WEIGHT });
    expect(shrinkSpread({ squares: 0, degreesOfFreedom: 0 }, noOthers)).toBeNull();
  });

  it("lies between own and pooled, nearer to the own the more batches there are", () => {
    const others = { squares: 100, degreesOfFreedom: 100 };
    const few = shrinkSpread({ squares: 4 * 4, degreesOfFreedom: 4 }, others)?.variance ?? Number.NaN;
    const many = shrinkSpread({ squares: 4 * 60, degreesOfFreedom: 60 }, others)?.variance ?? Number.NaN;
    expect(few).toLieWithin(2.5, 1e-12);
    expect(many).toBeGreaterThan(3.75);
    expect(many).toBeLessThan(4);
  });
});

describe("foretell(seen, others, limits, factor, size)", () => {
  it("is not moved by where a measure counts from, nor by its unit", () => {
    fc.assert(
      fc.property(variety, number(-50, 50), number(0.1, 20), (v, shift, scale) => {
        const others = { squares: v.squares, degreesOfFreedom: v.degreesOfFreedom };
        const chances = (move: (x: number) => number, stretch: number) =>
          foretell(
            [seenIn(v.one.map(move)), seenIn(v.other)],
            [{ ...others, squares: others.squares * stretch * stretch }, others],
            [within(move(-3), move(0.5), move(4)), within(-4, 0, 3)],
            factor(v.r),
            67,
          );
        const plain = chances((x) => x, 1);
        const moved = chances((x) => x * scale + shift, scale);
        expect(moved?.onTarget).toLieWithin(plain?.onTarget ?? Number.NaN, 1e-6);
        expect(moved?.even).toLieWithin(plain?.even ?? Number.NaN, 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it("does not see in what order batches came, and is a chance", () => {
    fc.assert(
      fc.property(variety, (v) => {
        const others = { squares: v.squares, degreesOfFreedom: v.degreesOfFreedom };
        const chances = (one: readonly number[]) =>
          foretell(
            [seenIn(one), seenIn(v.other)],
            [others, others],
            [within(-3, 0, 3), within(-3, 0, 3)],
            factor(v.r),
            67,
          );
        const forecast = chances(v.one);
        expect(chances([...v.one].reverse())?.onTarget).toLieWithin(forecast?.onTarget ?? Number.NaN, 1e-9);
        expect(forecast?.onTarget).toBeGreaterThanOrEqual(0);
        expect(forecast?.onTarget).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });

  it("is never likelier than its least likely measure, beyond what the integration misses", () => {
    fc.assert(
      fc.property(variety, (v) => {
        const others = { squares: v.squares, degreesOfFreedom: v.degreesOfFreedom };
        const forecast = foretell(
          [seenIn(v.one), seenIn(v.other)],
          [others, others],
          [within(-3, 0, 3), within(-2, 0, 4)],
          factor(v.r),
          509,
        );
        const least = Math.min(...(forecast?.measures ?? []).map(({ onTarget }) => onTarget));
        expect(forecast?.onTarget).toBeLessThanOrEqual(least + 2e-3);
      }),
      { numRuns: 60 },
    );
  });

  it("gives unrelated measures the product of their chances", () => {
    const seen = [seenIn([1, 2, 3, 4, 5, 6]), seenIn([3, 1, 4, 1, 5, 9])];
    // Many others, so that the t is nearly normal and its common scale ties nothing together.
    const others = seen.map(() => noOthers);
    const many = seen.map((one) => ({ ...one, count: 4000, squares: (one.squares / 5) * 3999 }));
    const forecast = foretell(many, others, [within(1, 3, 6), within(0, 4, 9)], [1, 0, 0, 1], 2039);
    const [one, other] = forecast?.measures ?? [];
    expect(forecast?.onTarget).toLieWithin((one?.onTarget ?? 0) * (other?.onTarget ?? 0), 1e-3);
  });

  it("sees an even variety with a wrong target: low on target, high in even", () => {
    const off = seenIn([4.9, 5, 5.1, 5, 4.9, 5.1]);
    const forecast = foretell([off], [noOthers], [within(3, 3.8, 4.6)], [1], 67);
    expect(forecast?.onTarget).toBeLessThan(0.01);
    expect(forecast?.even).toBeGreaterThan(0.99);
  });

  it("is modest about few batches: the same mean and spread from more of them are likelier inside wide limits", () => {
    const chance = (count: number): number =>
      foretell([{ count, mean: 0, squares: count - 1 }], [noOthers], [within(-2.5, 0, 2.5)], [1], 67)?.onTarget ?? 0;
    const chances = [5, 8, 12, 30, 200].map(chance);
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances.at(-1)).toLieWithin(0.9876, 2e-3);
  });

  it("takes no spread for less than the meter's step makes", () => {
    const same: Seen = { count: 20, mean: 0, squares: 0 };
    const forecast = foretell([same], [noOthers], [within(-1, 0, 1, spreadOfStep(2))], [1], 67);
    expect(forecast?.measures[0]?.margin.scale).toAgreeWithin((2 / Math.sqrt(12)) * Math.sqrt(1 + 1 / 20), 1e-12);
    expect(foretell([same], [noOthers], [within(-1, 0, 1)], [1], 67)?.onTarget).toBe(1);
    expect(foretell([{ ...same, mean: 2 }], [noOthers], [within(-1, 0, 1)], [1], 67)?.onTarget).toBe(0);
  });
});

describe("dragOf(forecast, limits, factor, size)", () => {
  it("is greatest for the measure that is furthest off, and nothing for one without limits", () => {
    const seen = [seenIn([1, 2, 3, 4, 5]), seenIn([1, 2, 3, 4, 5]), seenIn([1, 2, 3, 4, 5])];
    const free = Number.POSITIVE_INFINITY;
    const limits = [
      within(0, 3, 6),
      within(2.5, 3, 3.5),
      { low: -free, high: free, below: free, above: free, leastSpread: 0 },
    ];
    const identity = [1, 0, 0, 0, 1, 0, 0, 0, 1];
    const forecast = foretell(seen, [noOthers, noOthers, noOthers], limits, identity, 127);
    const drags = forecast === null ? [] : dragOf(forecast, limits, identity, 127);
    expect(drags[1]).toBeGreaterThan(drags[0] ?? 1);
    expect(drags[2]).toLieWithin(0, 1e-9);
  });
});

describe("together(parts)", () => {
  it("puts parts together as if they had never been apart", () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(number(-10, 10), { minLength: 2, maxLength: 6 }), { minLength: 1, maxLength: 6 }),
        (lots) => {
          const whole = seenIn(lots.flat());
          const put = together(lots.map(seenIn));
          expect(put.count).toBe(whole.count);
          expect(put.mean).toLieWithin(whole.mean, 1e-9);
          expect(put.squares).toLieWithin(whole.squares, 1e-7);
        },
      ),
    );
  });
});

describe("pooledCorrelation(groups, spread)", () => {
  const drawn = (count: number, r: number, seed: number): PairSums => {
    const [x, y] = [gaussian(seededRandom(seed), count), gaussian(seededRandom(seed + 1000), count)];
    const sums = new PairSums(2);
    for (const [at, value] of x.entries()) {
      sums.add([value + 7 * seed, r * value + Math.sqrt(1 - r * r) * (y[at] as number)]);
    }
    return sums;
  };

  it("finds what holds within varieties, however far apart they lie", () => {
    const groups = [1, 2, 3, 4].map((seed) => drawn(400, 0.6, seed));
    const { matrix, shrunkBy } = pooledCorrelation(groups, () => 1);
    expect(matrix[1]).toLieWithin(0.6, 0.05);
    expect(shrunkBy).toBeLessThan(0.01);
  });

  it("takes most of it away where few batches carry it", () => {
    const few = pooledCorrelation([drawn(4, 0.1, 9)], () => 1);
    const many = pooledCorrelation([drawn(400, 0.6, 9)], () => 1);
    expect(few.shrunkBy).toBeGreaterThan(many.shrunkBy);
    expect(Math.abs(few.matrix[1] ?? 1)).toBeLessThan(1);
  });

  it("skips what was not recorded, pair by pair", () => {
    const sums = new PairSums(2);
    for (const row of [
      [1, 2],
      [2, Number.NaN],
      [3, 6],
      [Number.NaN, 5],
      [5, 10],
    ]) {
      sums.add(row);
    }
    expect([sums.count(0), sums.count(1), sums.pairs(0, 1)]).toEqual([4, 4, 3]);
    expect(sums.mean(0)).toLieWithin(2.75, 1e-12);
    expect(sums.productsAboutMeans(0, 1)).toLieWithin(16, 1e-12);
  });

  it("weakens correlations that cannot stand together until they can", () => {
    // Each pair −0.9: no three variables are so.
    const matrix = Float64Array.from([1, -0.9, -0.9, -0.9, 1, -0.9, -0.9, -0.9, 1]);
    const found = correlationFactor({ matrix, shrunkBy: 0 }, [0, 1, 2]);
    expect(found.every(Number.isFinite)).toBe(true);
    expect(found[3]).toBeGreaterThan(-0.5);
  });
});
