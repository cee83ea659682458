import { expect } from "vitest";

interface NumericMatchers<R = unknown> {
  /** |received − expected| ≤ tolerance × |expected|. Use for anything whose size carries its precision. */
  toAgreeWithin(expected: number, relativeTolerance: number): R;
  /** |received − expected| ≤ tolerance, in the unit of both. Use where expected may be 0, or the source rounds to a fixed place. */
  toLieWithin(expected: number, absoluteTolerance: number): R;
}

declare module "vitest" {
  interface Matchers<R extends void | Promise<void> = void | Promise<void>, T = unknown> extends NumericMatchers<R> {}
}

function compare(received: unknown, expected: number, allowed: number, how: string) {
  const difference = typeof received === "number" ? Math.abs(received - expected) : Number.NaN;
  return {
    pass: difference <= allowed,
    message: () =>
      `expected ${expected} ${how}; got ${String(received)}, which is off by ${difference} (allowed ${allowed})`,
  };
}

expect.extend({
  toAgreeWithin(received: unknown, expected: number, tolerance: number) {
    return compare(received, expected, tolerance * Math.abs(expected), `within ${tolerance} relative`);
  },
  toLieWithin(received: unknown, expected: number, tolerance: number) {
    return compare(received, expected, tolerance, `within ${tolerance}`);
  },
});
