import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sampleStandardDeviation } from "../../../src/analysis/summary.ts";
import { ACROSPIRE_MIDPOINTS, type AcrospireCounts } from "../../../src/malting/acrospire.ts";
import { acrospireShares, addedCounts } from "../../../src/malting/germination/acrospireShares.ts";
import { countedLength, countedLengthInterval } from "../../../src/malting/germination/countedLength.ts";
import { kernelsToSeeLength, kernelsToSeeShares, lengthSeen } from "../../../src/malting/germination/countSize.ts";

const nothing: AcrospireCounts = { none: 0, toQuarter: 0, toHalf: 0, toThreeQuarters: 0, toFull: 0, over: 0 };
const names = Object.keys(nothing) as (keyof AcrospireCounts)[];
const count = fc.nat({ max: 60 });
const counts = fc.record({
  none: count,
  toQuarter: count,
  toHalf: count,
  toThreeQuarters: count,
  toFull: count,
  over: count,
});

/** Every kernel's length written out. */
const kernels = (all: AcrospireCounts): number[] =>
  names.flatMap((name) => new Array<number>(all[name]).fill(ACROSPIRE_MIDPOINTS[name]));

describe("countedLength(counts)", () => {
  test("is the mean of all kernels, its error their standard deviation over the root of their number", () => {
    fc.assert(
      fc.property(counts, (all) => {
        const lengths = kernels(all);
        fc.pre(lengths.length > 1);
        const spread = sampleStandardDeviation(lengths);
        fc.pre(spread > 0.25 / Math.sqrt(12));
        const found = countedLength(all);
        expect(found?.kernelStandardDeviation).toAgreeWithin(spread, 1e-12);
        expect(found?.standardError).toAgreeWithin(spread / Math.sqrt(lengths.length), 1e-12);
      }),
    );
  });

  test("does not take kernels of one class for kernels of one length", () => {
    const found = countedLength({ ...nothing, toFull: 100 });
    expect(found?.kernelStandardDeviation).toAgreeWithin(0.25 / Math.sqrt(12), 1e-12);
    expect(found?.standardError).toAgreeWithin(0.025 / Math.sqrt(12), 1e-12);
  });

  test("says nothing of fewer than two kernels", () => {
    expect(countedLength(nothing)).toBeNull();
    expect(countedLength({ ...nothing, toHalf: 1 })).toBeNull();
  });

  test("has an interval between no acrospire and all overgrown that holds the mean", () => {
    fc.assert(
      fc.property(counts, (all) => {
        const found = countedLength(all);
        fc.pre(found !== null);
        const { low, high, estimate } = countedLengthInterval(found as NonNullable<typeof found>);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1.125);
        expect(low).toBeLessThanOrEqual(estimate);
        expect(high).toBeGreaterThanOrEqual(estimate);
      }),
    );
  });
});

describe("acrospireShares(counts)", () => {
  test("10 overgrown of 100 are from 5.5 to 17.4 per cent", () => {
    // Often printed as the textbook example of the score interval (from memory).
    const found = acrospireShares({ ...nothing, toFull: 90, over: 10 });
    expect(found?.overgrownPercent.estimate).toAgreeWithin(10, 1e-12);
    expect(found?.overgrownPercent.low).toLieWithin(5.5, 0.05);
    expect(found?.overgrownPercent.high).toLieWithin(17.4, 0.05);
  });

  test("makes up the whole of three parts, and is null without kernels", () => {
    fc.assert(
      fc.property(counts, (all) => {
        const found = acrospireShares(all);
        if (found === null) expect(kernels(all)).toHaveLength(0);
        else {
          const { undergrownPercent, evenPercent, overgrownPercent } = found;
          expect(undergrownPercent.estimate + evenPercent.estimate + overgrownPercent.estimate).toLieWithin(100, 1e-9);
        }
      }),
    );
  });

  test("counts half a kernel's length as undergrown and full length as even", () => {
    const found = acrospireShares({ none: 1, toQuarter: 2, toHalf: 3, toThreeQuarters: 4, toFull: 5, over: 5 });
    expect(found?.undergrownPercent.estimate).toBe(30);
    expect(found?.evenPercent.estimate).toBe(45);
    expect(found?.overgrownPercent.estimate).toBe(25);
  });
});

test("addedCounts(all) holds the kernels of each", () => {
  fc.assert(
    fc.property(fc.array(counts, { maxLength: 4 }), (all) => {
      expect(kernels(addedCounts(all)).sort()).toEqual(all.flatMap(kernels).sort());
    }),
  );
});

describe("how many kernels a difference needs", () => {
  test("smaller differences need more, and a surer answer needs more", () => {
    expect(kernelsToSeeLength(0.025, 0.2)).toBeGreaterThan(kernelsToSeeLength(0.05, 0.2));
    expect(kernelsToSeeLength(0.05, 0.2, { power: 0.9 })).toBeGreaterThan(kernelsToSeeLength(0.05, 0.2));
    expect(kernelsToSeeShares(0.1, 0.13)).toBeGreaterThan(kernelsToSeeShares(0.1, 0.2));
    expect(kernelsToSeeShares(0.2, 0.1)).toBe(kernelsToSeeShares(0.1, 0.2));
  });

  test("lengthSeen(kernels, spread) is the difference for which kernelsToSeeLength asks for that many", () => {
    const size = fc.integer({ min: 20, max: 2000 });
    fc.assert(
      fc.property(size, fc.double({ min: 0.05, max: 0.4, noNaN: true }), (number, spread) => {
        const difference = lengthSeen(number, spread);
        expect(kernelsToSeeLength(difference * 1.000001, spread)).toBe(number);
        expect(kernelsToSeeLength(difference * 0.999999, spread)).toBe(number + 1);
      }),
    );
  });

  test("refuses no difference and what is no share", () => {
    expect(() => kernelsToSeeShares(0.2, 0.2)).toThrow(/got 0.2 and 0.2/);
    expect(() => kernelsToSeeShares(0.2, 20)).toThrow(RangeError);
    expect(() => kernelsToSeeLength(0, 0.2)).toThrow(/got 0 and 0.2/);
    expect(() => lengthSeen(0, 0.2)).toThrow(/got 0 kernels/);
  });
});
