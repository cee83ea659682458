import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type AcrospireCounts,
  acrospireCounted,
  meanAcrospireLength,
  overgrownPercent,
} from "../../src/malting/acrospire.ts";

const none: AcrospireCounts = { none: 0, toQuarter: 0, toHalf: 0, toThreeQuarters: 0, toFull: 0, over: 0 };

test.each([
  ["none", 0],
  ["toQuarter", 0.125],
  ["toHalf", 0.375],
  ["toThreeQuarters", 0.625],
  ["toFull", 0.875],
  ["over", 1.125],
] as const)("meanAcrospireLength of kernels all in %s is the class's own %d", (name, length) => {
  expect(meanAcrospireLength({ ...none, [name]: 40 })).toBe(length);
});

test("meanAcrospireLength weighs the classes by their counts", () => {
  // 2 at 0.375, 6 at 0.625, 10 at 0.875, 2 at 1.125: 15.5 in 20 kernels.
  const counts = { none: 0, toQuarter: 0, toHalf: 2, toThreeQuarters: 6, toFull: 10, over: 2 };
  expect(meanAcrospireLength(counts)).toLieWithin(15.5 / 20, 1e-12);
  expect(overgrownPercent(counts)).toLieWithin(10, 1e-12);
  expect(acrospireCounted(counts)).toBe(20);
});

test("meanAcrospireLength stays the same when every count is doubled", () => {
  const count = fc.nat({ max: 60 });
  const all = fc.record({
    none: count,
    toQuarter: count,
    toHalf: count,
    toThreeQuarters: count,
    toFull: count,
    over: count,
  });
  fc.assert(
    fc.property(all, (counts) => {
      fc.pre(acrospireCounted(counts) > 0);
      const twice = Object.fromEntries(
        Object.entries(counts).map(([k, n]) => [k, 2 * n]),
      ) as unknown as AcrospireCounts;
      expect(meanAcrospireLength(twice)).toLieWithin(meanAcrospireLength(counts) ?? Number.NaN, 1e-12);
    }),
  );
});

test("nothing counted has no mean length and no share", () => {
  expect(meanAcrospireLength(none)).toBeNull();
  expect(overgrownPercent(none)).toBeNull();
});

test("counts that are not whole numbers from 0 are refused by name", () => {
  expect(() => meanAcrospireLength({ ...none, toHalf: -1 })).toThrow(/got -1 for toHalf/);
  expect(() => meanAcrospireLength({ ...none, over: 1.5 })).toThrow(/got 1.5 for over/);
});
