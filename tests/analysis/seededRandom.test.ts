import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { randomFromState, seededRandom } from "../../src/analysis/seededRandom.ts";

describe("randomFromState(state) and seededRandom(seed)", () => {
  test("draw the numbers of the reference program from the state 1 2 3 4", () => {
    // xoshiro128starstar.c version 1.1 of Blackman and Vigna, as recorded in the tests of Rust's rand_xoshiro.
    const { bits } = randomFromState([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, bits)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  test("the same seed repeats, another does not", () => {
    const draw = (seed: number) => Array.from({ length: 5 }, seededRandom(seed).uniform);
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
    expect(draw(7)).not.toEqual(draw(7 + 2 ** 32));
  });

  test("uniform() lies in [0, 1) and below(bound) in 0 to bound − 1", () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), fc.integer({ min: 1, max: 2 ** 32 }), (seed, bound) => {
        const random = seededRandom(seed);
        const share = random.uniform();
        const whole = random.below(bound);
        expect(share >= 0 && share < 1 && Number.isInteger(whole) && whole >= 0 && whole < bound).toBe(true);
      }),
    );
  });

  test("ten equal bins fill evenly", () => {
    const random = seededRandom(1);
    const counts = new Array<number>(10).fill(0);
    for (let draw = 0; draw < 10_000; draw += 1) {
      const bin = random.below(10);
      counts[bin] = (counts[bin] ?? 0) + 1;
    }
    const chiSquare = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    // Chi-square with 9 degrees of freedom: 27.88 is passed once in a thousand (tables, from memory).
    expect(chiSquare).toBeLessThan(27.88);
  });

  test("refuse what is no seed, no state and no bound", () => {
    expect(() => seededRandom(0.5)).toThrow(new RangeError("seededRandom requires a whole number; got 0.5"));
    expect(() => randomFromState([0, 0, 0, 0])).toThrow(RangeError);
    expect(() => seededRandom(1).below(0)).toThrow(
      new RangeError("below requires a whole number from 1 to 2^32; got 0"),
    );
  });
});
