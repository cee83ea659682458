import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { loadWeights } from "../../../src/analysis/drift/loadWeights.ts";
import { mannKendall } from "../../../src/analysis/drift/mannKendall.ts";
import { pettitt } from "../../../src/analysis/drift/pettitt.ts";
import { theilSen } from "../../../src/analysis/drift/theilSen.ts";
import { scattered, unevenDays } from "./series.ts";

const wholeValues = fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 4, maxLength: 30 });

describe("mannKendall(days, values)", () => {
  test("read backwards or turned upside down s changes sign, and its variance stays", () => {
    fc.assert(
      fc.property(wholeValues, (values) => {
        const days = values.map((_, at) => at);
        const forward = mannKendall(days, values);
        const backward = mannKendall(days, values.slice().reverse());
        const turned = mannKendall(
          days,
          values.map((value) => -value),
        );
        if (!forward || !backward || !turned) throw new Error("too few");
        expect(backward.s + forward.s).toBe(0);
        expect(turned.s + forward.s).toBe(0);
        expect(backward.variance).toAgreeWithin(forward.variance, 1e-12);
        expect(forward.p).toLieWithin(turned.p, 1e-15);
      }),
    );
  });

  test("values that only rise reach s = n (n − 1)/2 and tau 1, and any rising rescaling keeps both", () => {
    const days = unevenDays(12);
    expect(mannKendall(days, days)?.s).toBe(66);
    expect(mannKendall(days, days)?.tau).toAgreeWithin(1, 1e-15);
    expect(mannKendall(days, days.map(Math.exp))?.s).toBe(66);
    // n (n − 1)(2n + 5)/18 without ties.
    expect(mannKendall(days, days)?.variance).toAgreeWithin((12 * 11 * 29) / 18, 1e-15);
  });

  test("has nothing to say of values that do not vary, and null of three", () => {
    expect(mannKendall([1, 2, 3, 4], [7, 7, 7, 7])).toEqual({ s: 0, variance: 0, z: 0, p: 1, tau: 0 });
    expect(mannKendall([1, 2, 3], [1, 2, 3])).toBeNull();
  });

  test("is significant at 5 % in about 5 of 100 quiet stretches", () => {
    let significant = 0;
    for (let seed = 1; seed <= 1000; seed += 1) {
      const values = scattered(new Float64Array(20), 1, seed);
      if ((mannKendall(unevenDays(20, seed), values)?.p ?? 1) < 0.05) significant += 1;
    }
    // Binomial: 30 to 73 of 1000 in 99.8 of 100 such studies.
    expect(significant).toBeGreaterThanOrEqual(30);
    expect(significant).toBeLessThanOrEqual(73);
  });
});

describe("theilSen(days, values)", () => {
  test("recovers an exact line from uneven days, one load in four gone astray", () => {
    const days = unevenDays(40);
    const values = days.map((day, at) => 3 - 0.02 * day + (at % 4 === 1 ? 5 + at : 0));
    const found = theilSen(days, values);
    expect(found?.slopePerDay.estimate).toLieWithin(-0.02, 0.02);
    const clean = theilSen(
      days,
      days.map((day) => 3 - 0.02 * day),
    );
    expect(clean?.slopePerDay.estimate).toAgreeWithin(-0.02, 1e-10);
    expect(clean?.intercept).toAgreeWithin(3, 1e-10);
  });

  test("scales with values and time, ignores a shift, turns with reversal", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1, max: 9 }), (seed, scale) => {
        const days = unevenDays(15, seed);
        const values = scattered(
          days.map((day) => day / 50),
          0.5,
          seed,
        );
        const plain = theilSen(days, values)?.slopePerDay;
        const scaled = theilSen(
          days.map((day) => 2 * day - 7),
          values.map((value) => scale * value + 4),
        )?.slopePerDay;
        const reversed = theilSen(days.map((day) => -day).reverse(), values.slice().reverse())?.slopePerDay;
        if (!plain || !scaled || !reversed) throw new Error("too few");
        for (const end of ["estimate", "low", "high"] as const) {
          expect(scaled[end]).toLieWithin((scale / 2) * plain[end], 1e-9);
        }
        expect(reversed.estimate).toLieWithin(-plain.estimate, 1e-12);
        expect(plain.low <= plain.estimate && plain.estimate <= plain.high).toBe(true);
      }),
    );
  });

  test("its 95 % interval holds the slope in 95 of 100 lines or a little more", () => {
    let held = 0;
    for (let seed = 1; seed <= 500; seed += 1) {
      const days = unevenDays(18, seed);
      const slope = theilSen(
        days,
        scattered(
          days.map((day) => 0.02 * day),
          0.4,
          seed + 7,
        ),
      )?.slopePerDay;
      if (slope && slope.low <= 0.02 && 0.02 <= slope.high) held += 1;
    }
    // Binomial with 95 %: 460 or more of 500 in 99.8 of 100 such studies.
    expect(held).toBeGreaterThanOrEqual(460);
    expect(held).toBeLessThan(500);
  });

  test("reads only what follows the onset", () => {
    const days = unevenDays(30);
    const onset = days[14] as number;
    const values = days.map((day) => 0.05 * Math.max(0, day - onset));
    expect(theilSen(days, values, { from: onset })?.slopePerDay.estimate).toAgreeWithin(0.05, 1e-9);
    expect(theilSen(days, values, { from: onset })?.loads).toBe(16);
    expect(theilSen(days, values, { from: days[28] as number })).toBeNull();
    expect(() => theilSen(days, values, { level: 0 })).toThrow(RangeError);
  });
});

describe("pettitt(values)", () => {
  test("finds an exact step and its side; reversed, the mirrored one with the same K", () => {
    const values = Array.from({ length: 15 }, (_, at) => (at < 9 ? 1 : 4));
    // Every pair across the step counts once: K = 9 × 6.
    expect(pettitt(values)).toMatchObject({ k: 54, loadsBefore: 9, direction: "up" });
    expect(pettitt(values.slice().reverse())).toMatchObject({ k: 54, loadsBefore: 6, direction: "down" });
  });

  test("agrees with its sum of signs, ties and all", () => {
    fc.assert(
      fc.property(wholeValues, (values) => {
        let most = 0;
        for (let split = 1; split < values.length; split += 1) {
          let sum = 0;
          for (const before of values.slice(0, split))
            for (const after of values.slice(split)) sum += Math.sign(before - after);
          most = Math.max(most, Math.abs(sum));
        }
        expect(pettitt(values)?.k).toBe(most);
      }),
    );
  });

  test("has nothing to say of values that do not vary, and null of three", () => {
    expect(pettitt([2, 2, 2, 2])).toEqual({ k: 0, loadsBefore: 0, direction: "none", p: 1 });
    expect(pettitt([1, 2, 3])).toBeNull();
    expect(() => pettitt([1, 2, 3, Number.NaN])).toThrow(RangeError);
  });
});

describe("loadWeights(days, values, standardErrors)", () => {
  test("equal errors weigh alike; a worse read load weighs less, never nothing", () => {
    const days = unevenDays(20);
    const values = scattered(new Float64Array(20), 0.4);
    expect(Array.from(loadWeights(days, values, new Float64Array(20).fill(0.1)).weights)).toEqual(
      new Array(20).fill(1),
    );
    const errors = days.map((_, at) => (at === 5 ? 1 : 0.1));
    const { weights, betweenLoads } = loadWeights(days, values, errors);
    expect(weights[5] as number).toBeLessThan((weights[4] as number) / 2);
    expect(weights[5] as number).toBeGreaterThan(0);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toAgreeWithin(20, 1e-12);
    expect(betweenLoads).toBeGreaterThan(0.1);
  });

  test("a steady creep does not swell the spread between loads", () => {
    const days = Float64Array.from({ length: 200 }, (_, at) => 5 * at);
    const values = scattered(
      days.map((day) => 0.004 * day),
      0.4,
    );
    expect(loadWeights(days, values, new Float64Array(200)).betweenLoads).toLieWithin(0.4, 0.06);
  });
});
