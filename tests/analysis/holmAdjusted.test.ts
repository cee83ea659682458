import fc from "fast-check";
import { expect, test } from "vitest";
import { holmAdjusted } from "../../src/analysis/holmAdjusted.ts";

const probabilities = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 30 });

test("holmAdjusted(p) raises probabilities, keeps their order and stays within 1", () => {
  fc.assert(
    fc.property(probabilities, (p) => {
      const adjusted = holmAdjusted(p);
      expect(adjusted).toHaveLength(p.length);
      for (const [a, own] of adjusted.entries()) {
        expect(own).toBeGreaterThanOrEqual(p[a] as number);
        expect(own).toBeLessThanOrEqual(1);
        for (const [b, other] of adjusted.entries()) {
          if ((p[a] as number) <= (p[b] as number)) expect(own).toBeLessThanOrEqual(other);
        }
      }
    }),
  );
});

test("holmAdjusted(p) lies between nothing and Bonferroni, and is Bonferroni for the smallest", () => {
  fc.assert(
    fc.property(probabilities, (p) => {
      fc.pre(p.length > 0);
      const smallest = Math.min(...p);
      expect(holmAdjusted(p)[p.indexOf(smallest)]).toBe(Math.min(1, p.length * smallest));
    }),
  );
});

test("holmAdjusted(p) refuses what is no probability", () => {
  expect(() => holmAdjusted([0.2, 1.2])).toThrow("holmAdjusted requires probabilities from 0 to 1; got 1.2");
});
