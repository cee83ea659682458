import fc from "fast-check";
import { expect, test } from "vitest";
import { smallestBetween } from "../../src/analysis/smallestBetween.ts";

test("smallestBetween(of, from, to, tolerance) finds the bottom of a dip wherever it lies", () => {
  fc.assert(
    fc.property(fc.double({ min: -9, max: 14, noNaN: true }), (bottom) => {
      expect(smallestBetween((x) => Math.abs(x - bottom), -9, 14, 1e-9)).toLieWithin(bottom, 2e-9);
    }),
  );
});

test("smallestBetween(of, from, to, tolerance) ends at an end that all slopes to, and refuses ends out of order", () => {
  expect(smallestBetween((x) => x, 2, 5, 1e-9)).toLieWithin(2, 2e-9);
  expect(() => smallestBetween((x) => x, 5, 2, 1e-9)).toThrow("got 5, 2, 1e-9");
});
