import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  dryMatterYieldPercent,
  maltingLoss,
  steepOutMassAt,
  steepOutMoisturePercent,
  waterRemovedKilograms,
} from "../../src/malting/massBalance.ts";
import { waterToRemove } from "../../src/malting/waterToRemove.ts";

const mass = fc.double({ min: 100, max: 900, noNaN: true });
const dryGrain = fc.double({ min: 8, max: 16, noNaN: true });
const wet = fc.double({ min: 35, max: 50, noNaN: true });

test("steepOutMoisturePercent inverts steepOutMassAt", () => {
  fc.assert(
    fc.property(mass, dryGrain, wet, (grain, moisture, wanted) => {
      const steeped = steepOutMassAt(grain, moisture, wanted);
      expect(steepOutMoisturePercent(grain, moisture, steeped)).toLieWithin(wanted, 1e-9);
    }),
  );
});

test("steepOutMoisturePercent refuses a steep-out mass below the dry matter", () => {
  expect(() => steepOutMoisturePercent(300, 12, 200)).toThrow(RangeError);
});

test("waterRemovedKilograms is the difference of the masses at the two moistures", () => {
  fc.assert(
    fc.property(mass, wet, fc.double({ min: 3, max: 8, noNaN: true }), (dryMatter, from, to) => {
      const difference = dryMatter / (1 - from / 100) - dryMatter / (1 - to / 100);
      expect(waterRemovedKilograms(dryMatter, from, to)).toAgreeWithin(difference, 1e-9);
    }),
  );
});

describe("maltingLoss", () => {
  const batch = { grainInKilograms: 300, grainMoisturePercent: 12, maltKilograms: 250, maltMoisturePercent: 4.5 };

  test("and the dry-matter yield make 100 %, and its two parts make the loss", () => {
    const loss = maltingLoss(batch, { kilograms: 10, moisturePercent: 6 });
    expect(loss.totalPercent + dryMatterYieldPercent(batch)).toLieWithin(100, 1e-12);
    expect((loss.rootletsPercent ?? 0) + (loss.restPercent ?? 0)).toLieWithin(loss.totalPercent, 1e-12);
    expect(loss.rootletsPercent).toLieWithin((100 * 9.4) / 264, 1e-9);
  });

  test("leaves the split open where rootlets were not weighed, and shows a negative rest rather than hide it", () => {
    expect(maltingLoss(batch, null).rootletsPercent).toBeNull();
    const tooMuch = maltingLoss({ ...batch, maltKilograms: 270 }, { kilograms: 20, moisturePercent: 6 });
    expect(tooMuch.restPercent).toBeLessThan(0);
  });
});

describe("waterToRemove", () => {
  const usual = { greenPerGrain: 1.46, greenMoisturePercent: 44 };
  const full = { greenLoadKilograms: 438, greenMoisturePercent: 44, grainInKilograms: 300 };

  test("names the basis it took, best first", () => {
    expect(waterToRemove(full, usual, 4.5)?.basis).toBe("green load and green moisture");
    expect(waterToRemove({ ...full, greenMoisturePercent: null }, usual, 4.5)?.basis).toBe(
      "green load at the usual green moisture",
    );
    const grainOnly = { ...full, greenLoadKilograms: null, greenMoisturePercent: null };
    expect(waterToRemove(grainOnly, usual, 4.5)?.basis).toBe("grain in at the usual gain");
  });

  test("gives the same water on every basis when the load is the usual one", () => {
    const whole = waterToRemove(full, usual, 4.5)?.kilograms ?? 0;
    expect(waterToRemove({ ...full, greenMoisturePercent: null }, usual, 4.5)?.kilograms).toAgreeWithin(whole, 1e-12);
    const grainOnly = { ...full, greenLoadKilograms: null };
    expect(waterToRemove(grainOnly, usual, 4.5)?.kilograms).toAgreeWithin(whole, 1e-12);
  });

  test("is null where nothing was weighed or the usual is not known", () => {
    expect(waterToRemove({ ...full, greenLoadKilograms: null, grainInKilograms: null }, usual, 4.5)).toBeNull();
    expect(waterToRemove({ ...full, greenMoisturePercent: null }, null, 4.5)).toBeNull();
  });

  test("refuses green malt drier than the target", () => {
    expect(() => waterToRemove({ ...full, greenMoisturePercent: 4 }, usual, 4.5)).toThrow(/drier than the target/);
  });
});
