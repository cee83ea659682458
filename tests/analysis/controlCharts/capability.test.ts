import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { capability } from "../../../src/analysis/controlCharts/capability.ts";
import { readingStep, readingsAreCoarse } from "../../../src/analysis/readingStep.ts";
import { skewnessTest } from "../../../src/analysis/skewness.ts";

const values = fc.array(
  fc.integer({ min: -500, max: 500 }).map((v) => v / 8),
  { minLength: 8, maxLength: 40 },
);

describe("capability", () => {
  test("shifting and scaling values and specification alike changes no share and no index", () => {
    fc.assert(
      fc.property(values, fc.integer({ min: -20, max: 20 }), fc.constantFrom(0.5, 2, 4), (x, shift, factor) => {
        const here = capability(x, { low: -40, high: 30 });
        const there = capability(
          x.map((v) => factor * v + shift),
          { low: factor * -40 + shift, high: factor * 30 + shift },
        );
        expect(there === null).toBe(here === null);
        if (here === null || there === null) return;
        expect(there.cpk.low).toLieWithin(here.cpk.low, 1e-9);
        expect(there.cp?.high).toLieWithin(here.cp?.high ?? Number.NaN, 1e-9);
        expect(there.expectedOutside.estimate).toLieWithin(here.expectedOutside.estimate, 1e-9);
        expect(there.expectedOutside.high).toLieWithin(here.expectedOutside.high, 1e-9);
        expect(there.seenOutsideCount).toBe(here.seenOutsideCount);
      }),
      { numRuns: 40 },
    );
  });

  test("the expected share of two ends is that of each end added, and every interval holds its estimate", () => {
    fc.assert(
      fc.property(values, (x) => {
        const both = capability(x, { low: -40, high: 30 });
        const low = capability(x, { low: -40, high: null });
        const high = capability(x, { low: null, high: 30 });
        if (!both || !low || !high) return;
        expect(both.expectedOutside.estimate).toLieWithin(
          low.expectedOutside.estimate + high.expectedOutside.estimate,
          1e-12,
        );
        expect(both.seenOutsideCount).toBe(low.seenOutsideCount + high.seenOutsideCount);
        expect(both.cpk.estimate).toBe(Math.min(low.cpk.estimate, high.cpk.estimate));
        for (const interval of [both.expectedOutside, both.seenOutside, both.cpk]) {
          expect(interval.low).toBeLessThanOrEqual(interval.estimate);
          expect(interval.high).toBeGreaterThanOrEqual(interval.estimate);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("is null for four values or no spread, and refuses a specification without ends", () => {
    expect(capability([1, 2, 3, 4], { low: 0, high: 9 })).toBeNull();
    expect(capability([3, 3, 3, 3, 3], { low: 0, high: 9 })).toBeNull();
    expect(() => capability([1, 2, 3, 4, 5], { low: null, high: null })).toThrow(RangeError);
    expect(() => capability([1, 2, 3, 4, 5], { low: 3, high: 3 })).toThrow(RangeError);
  });

  test("a value on the end of the specification is within it", () => {
    expect(capability([1, 2, 3, 4, 5], { low: 1, high: 5 })?.seenOutsideCount).toBe(0);
    expect(capability([1, 2, 3, 4, 5.1], { low: 1, high: 5 })?.seenOutsideCount).toBe(1);
  });
});

describe("readings", () => {
  test("of a meter that reads to 0.5 show its step, wherever they start", () => {
    expect(readingStep([4.5, 4, 4.5, 5, 6])).toEqual({ distinctValues: 4, step: 0.5, onGrid: true });
    expect(readingStep([0.1 + 0.2, 0.3, 0.4]).distinctValues).toBe(2);
    expect(readingStep([1, 1.5, 2.2]).onGrid).toBe(false);
    expect(readingStep([7])).toEqual({ distinctValues: 1, step: null, onGrid: false });
  });

  test("are coarse where the step is wider than sigma, and never for a handful or off a grid", () => {
    const halves = [4.5, 4, 4.5, 4.5, 5, 4.5, 4.5];
    expect(readingsAreCoarse(halves, 0.3)).toBe(true);
    expect(readingsAreCoarse(halves, 0.6)).toBe(false);
    expect(readingsAreCoarse(halves.slice(0, 5), 0.3)).toBe(false);
    expect(readingsAreCoarse([4.51, 4.03, 4.48, 4.6, 5.02, 4.11], 0.3)).toBe(false);
    expect(readingsAreCoarse([4, 4, 4, 4, 4, 4], 0.1)).toBe(true);
  });
});

test("skewnessTest: mirrored values have the opposite skewness and the same p", () => {
  fc.assert(
    fc.property(values, (x) => {
      const here = skewnessTest(x);
      const mirrored = skewnessTest(x.map((v) => -v));
      expect(mirrored === null).toBe(here === null);
      if (here === null || mirrored === null) return;
      expect(mirrored.skewness).toLieWithin(-here.skewness, 1e-9);
      expect(mirrored.p).toLieWithin(here.p, 1e-9);
    }),
  );
  expect(skewnessTest([1, 2, 3, 4, 5, 6, 7])).toBeNull();
});
