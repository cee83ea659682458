import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chanceAlarmReal, chanceReal } from "../../../src/findings/facts/chanceReal.ts";

const withError = (estimate: number, error: number) => ({
  estimate,
  low: estimate - 1.959_963_984_540_054 * error,
  high: estimate + 1.959_963_984_540_054 * error,
});

describe("chanceReal(effect, before)", () => {
  it("is Bayes' rule between two normal densities", () => {
    // Prior odds 1 : 9; densities of 3 under N(0, 1) and N(0, √2): exp(−4.5) and exp(−2.25)/√2.
    const odds = (1 / 9) * (Math.exp(-2.25) / Math.SQRT2 / Math.exp(-4.5));
    expect(chanceReal(withError(3, 1), { share: 0.1, size: 1 })).toAgreeWithin(odds / (1 + odds), 1e-12);
  });

  it("speaks against an effect of nothing, more so the surer it is measured", () => {
    const before = { share: 0.1, size: 1 };
    const loose = chanceReal(withError(0, 1), before);
    const tight = chanceReal(withError(0, 0.1), before);
    expect(loose).toBeLessThan(0.1);
    expect(tight).toBeLessThan(loose);
  });

  it("grows with the effect, whatever its sign, and stays a chance", () => {
    const positive = fc.double({ min: 0.05, max: 5, noNaN: true });
    fc.assert(
      fc.property(positive, positive, positive, (estimate, error, more) => {
        const before = { share: 0.1, size: 1 };
        const [less, greater] = [withError(estimate, error), withError(estimate + more, error)];
        const chance = chanceReal(less, before);
        expect(chance).toBeGreaterThanOrEqual(0);
        expect(chance).toBeLessThanOrEqual(1);
        expect(chanceReal(greater, before)).toBeGreaterThanOrEqual(chance);
        expect(chanceReal(withError(-estimate, error), before)).toAgreeWithin(chance, 1e-12);
      }),
    );
  });

  it("refuses a share that is no chance and a size of nothing", () => {
    expect(() => chanceReal(withError(1, 1), { share: 1, size: 1 })).toThrow(RangeError);
    expect(() => chanceReal(withError(1, 1), { share: 0.5, size: 0 })).toThrow(RangeError);
  });
});

describe("chanceAlarmReal(expectedFalse, before)", () => {
  it("is sure where alarms never come by chance, and no surer than before where they always do", () => {
    expect(chanceAlarmReal(0, { share: 0.05, power: 0.9 })).toBe(1);
    expect(chanceAlarmReal(50, { share: 0.05, power: 1 })).toAgreeWithin(0.05, 1e-9);
  });
});
