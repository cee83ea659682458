import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nextValueInterval } from "../../src/analysis/nextValue.ts";

const values = fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 2, maxLength: 40 });

describe("nextValueInterval(values, coverage)", () => {
  it("reaches as many standard deviations as a published factor: 20 values, 95 %", () => {
    // EnvStats manual (S. Millard), predIntNormK, first example: predIntNormK(n = 20) is 2.144711.
    const drawn = Array.from({ length: 20 }, (_, i) => i * i);
    const { low, high } = nextValueInterval(drawn, 0.95);
    const mean = drawn.reduce((sum, value) => sum + value, 0) / 20;
    const deviation = Math.sqrt(drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 19);
    expect((high - low) / 2 / deviation).toLieWithin(2.144711, 5e-7);
  });

  it("moves with its values and grows with their unit", () => {
    fc.assert(
      fc.property(values, fc.double({ min: -50, max: 50, noNaN: true }), (drawn, shift) => {
        const one = nextValueInterval(drawn, 0.9);
        const other = nextValueInterval(
          drawn.map((value) => 2 * value + shift),
          0.9,
        );
        expect(other.low).toLieWithin(2 * one.low + shift, 1e-7);
        expect(other.high).toLieWithin(2 * one.high + shift, 1e-7);
      }),
    );
  });

  it("refuses one value, and a coverage that is no chance", () => {
    expect(() => nextValueInterval([4.4], 0.9)).toThrow("at least two values; got 1");
    expect(() => nextValueInterval([4.4, 4.5], 1)).toThrow("coverage");
  });
});
