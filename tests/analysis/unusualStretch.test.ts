import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/analysis/seededRandom.ts";
import { unusualStretch } from "../../src/analysis/unusualStretch.ts";
import { gaussian } from "./gaussian.ts";

const noise = (count: number, seed: number): Float64Array => gaussian(seededRandom(seed), count);
const raised = (values: Float64Array, start: number, end: number, by: number): Float64Array =>
  values.map((value, at) => (at >= start && at <= end ? value + by : value));

describe("unusualStretch(residuals, standardDeviation)", () => {
  test("finds a raised stretch where it was put, to within a few", () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const found = unusualStretch(raised(noise(180, seed), 100, 111, 2.5), 1);
      // By chance a second one may stand out beside it, once in a hundred.
      const clearest = found.toSorted((a, b) => Math.abs(b.standardised) - Math.abs(a.standardised))[0];
      expect(clearest?.start).toLieWithin(100, 3);
      expect(clearest?.end).toLieWithin(111, 3);
      expect(clearest?.mean).toBeGreaterThan(1);
      expect(clearest?.standardised).toBeGreaterThan(3);
    }
  });

  test("finds a raised and a lowered stretch, in time order", () => {
    const residuals = raised(raised(noise(200, 6), 140, 151, 2.5), 40, 51, -2.5);
    const found = unusualStretch(residuals, 1);
    expect(found).toHaveLength(2);
    expect(found.map(({ mean }) => Math.sign(mean))).toEqual([-1, 1]);
    expect(found[0]?.start).toLieWithin(40, 3);
    expect(found[1]?.start).toLieWithin(140, 3);
  });

  test("raises nothing for one outlier, however large", () => {
    expect(unusualStretch(noise(100, 7).with(50, 30), 1)).toEqual([]);
  });

  test("cries wolf on unrelated residuals in about 1 of 100", () => {
    const alarms = Array.from({ length: 200 }, (_, at) => unusualStretch(noise(60, 1000 + at), 1).length).filter(
      Boolean,
    );
    // Binomial(200, 0.01) passes 7 about once in a thousand.
    expect(alarms.length).toBeLessThanOrEqual(7);
  });

  test("gives the same answer each time, and the mirrored one for mirrored residuals", () => {
    const residuals = raised(noise(120, 9), 30, 45, 2);
    const found = unusualStretch(residuals, 1);
    expect(found.length).toBeGreaterThan(0);
    expect(unusualStretch(residuals, 1)).toEqual(found);
    const mirrored = unusualStretch(
      residuals.map((value) => -value),
      1,
    );
    expect(mirrored.map(({ start, end }) => [start, end])).toEqual(found.map(({ start, end }) => [start, end]));
    expect(mirrored[0]?.mean).toAgreeWithin(-(found[0]?.mean as number), 1e-12);
  });

  test("does not depend on the unit, but for what it reports", () => {
    const residuals = raised(noise(120, 10), 30, 45, 2);
    const inMinutes = unusualStretch(
      residuals.map((value) => value * 60),
      60,
    );
    const inHours = unusualStretch(residuals, 1);
    expect(inMinutes.map(({ start, end }) => [start, end])).toEqual(inHours.map(({ start, end }) => [start, end]));
    expect(inMinutes[0]?.standardised).toAgreeWithin(inHours[0]?.standardised as number, 1e-9);
  });

  test("says nothing of fewer than twelve, or of residuals without spread", () => {
    expect(unusualStretch([], 1)).toEqual([]);
    expect(unusualStretch([0, 0, 0, 0, 9, 9, 9, 9, 0, 0, 0], 1)).toEqual([]);
    expect(unusualStretch(new Float64Array(50), 0)).toEqual([]);
    expect(unusualStretch(new Float64Array(50), 1)).toEqual([]);
  });

  test("refuses residuals that are not finite", () => {
    expect(() => unusualStretch([1, Number.NaN], 1)).toThrow(
      new RangeError("unusualStretch requires finite residuals; got another at 1"),
    );
  });
});
