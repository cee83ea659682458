import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  chiSquareQuantile,
  chiSquareUpperTail,
  fQuantile,
  fUpperTail,
  normalCdf,
  normalQuantile,
  studentTQuantile,
  studentTTwoSidedP,
} from "../../src/analysis/distributions.ts";

/** Quantiles by R 4.2.2, 16 digits; NIST/SEMATECH e-Handbook 1.3.6.7.2 to 1.3.6.7.4 prints the same to 3 decimals. */
const reference: {
  readonly tq: readonly { p: number; df: number; v: number }[];
  readonly fq: readonly { p: number; d1: number; d2: number; v: number }[];
  readonly cq: readonly { p: number; df: number; v: number }[];
  readonly nq: readonly { p: number; v: number }[];
  /** One-sided upper tails of t and F, and the normal cdf, at x. */
  readonly tsf: readonly { x: number; df: number; v: number }[];
  readonly fsf: readonly { x: number; d1: number; d2: number; v: number }[];
  readonly nc: readonly { x: number; v: number }[];
} = JSON.parse(readFileSync(new URL("reference/quantiles.json", import.meta.url), "utf8"));

describe("quantiles and tails agree with R", () => {
  test("studentTQuantile(p, df) and its tail at the same point", () => {
    expect(reference.tq.length).toBeGreaterThan(50);
    for (const { p, df, v } of reference.tq) {
      expect(studentTQuantile(p, df)).toAgreeWithin(v, 1e-12);
      // The two-sided tail at the quantile is 2(1 − p), and 1 − p is exact only to the rounding of p.
      expect(studentTTwoSidedP(v, df)).toAgreeWithin(2 * (1 - p), 1e-11);
      expect(studentTTwoSidedP(-v, df)).toBe(studentTTwoSidedP(v, df));
    }
  });

  test("fQuantile(p, d1, d2) and its upper tail at the same point", () => {
    expect(reference.fq.length).toBeGreaterThan(50);
    for (const { p, d1, d2, v } of reference.fq) {
      expect(fQuantile(p, d1, d2)).toAgreeWithin(v, 1e-12);
      // At quantiles near 1e6 the library's beta argument rounds to within 1e-10 of 1, and as much is lost of the tail.
      expect(fUpperTail(v, d1, d2)).toAgreeWithin(1 - p, 1e-9);
    }
  });

  test("chiSquareQuantile(p, df) and its upper tail at the same point", () => {
    expect(reference.cq.length).toBeGreaterThan(50);
    for (const { p, df, v } of reference.cq) {
      expect(chiSquareQuantile(p, df)).toAgreeWithin(v, 1e-12);
      expect(chiSquareUpperTail(v, df)).toAgreeWithin(1 - p, 1e-11);
    }
  });
});

describe("tails agree with R far out", () => {
  test("studentTTwoSidedP(t, df) is twice the upper tail", () => {
    expect(reference.tsf.length).toBeGreaterThan(50);
    for (const { x, df, v } of reference.tsf) expect(studentTTwoSidedP(x, df)).toAgreeWithin(2 * v, 1e-11);
  });

  test("fUpperTail(f, d1, d2)", () => {
    expect(reference.fsf.length).toBeGreaterThan(50);
    for (const { x, d1, d2, v } of reference.fsf) expect(fUpperTail(x, d1, d2)).toAgreeWithin(v, 1e-11);
  });

  test("normalCdf(z) and normalQuantile(p)", () => {
    expect(reference.nc.length + reference.nq.length).toBeGreaterThan(20);
    for (const { x, v } of reference.nc) expect(normalCdf(x)).toAgreeWithin(v, 1e-12);
    for (const { p, v } of reference.nq) expect(normalQuantile(p)).toLieWithin(v, 1e-14 * Math.max(1, Math.abs(v)));
  });
});

describe("small tails keep their digits", () => {
  test("studentTTwoSidedP(t, 1) is 2 atan(1/t) / π, and with 2 degrees of freedom 1 − t/√(2 + t²) by series", () => {
    // Closed form of the Cauchy distribution.
    for (const t of [1, 30, 1e4, 1e8])
      expect(studentTTwoSidedP(t, 1)).toAgreeWithin((2 * Math.atan(1 / t)) / Math.PI, 1e-12);
    // Closed form for 2 degrees of freedom, written without a difference: 2 / (√(2 + t²) (√(2 + t²) + t)).
    for (const t of [1, 30, 1e4]) {
      const root = Math.sqrt(2 + t * t);
      expect(studentTTwoSidedP(t, 2)).toAgreeWithin(2 / (root * (root + t)), 1e-12);
    }
  });

  test("fUpperTail(f, 2, d2) is (1 + 2f/d2)^(−d2/2)", () => {
    // Closed form for 2 degrees of freedom in the numerator; the last is as small as 1e-93.
    for (const [f, d2] of [
      [1, 10],
      [60, 17],
      [5436385, 34],
    ] as const) {
      expect(fUpperTail(f, 2, d2)).toAgreeWithin((1 + (2 * f) / d2) ** (-d2 / 2), 1e-9);
    }
  });

  test("chiSquareUpperTail(x, 2) is e^(−x/2), far beyond where 1 − cdf is 0", () => {
    for (const x of [0.1, 10, 200, 1000]) expect(chiSquareUpperTail(x, 2)).toAgreeWithin(Math.exp(-x / 2), 1e-13);
  });
});

test.each([
  [() => studentTQuantile(1, 5), "studentTQuantile requires a probability between 0 and 1; got 1"],
  [() => studentTQuantile(0.9, 0), "studentTQuantile requires positive degrees of freedom; got 0"],
  [() => studentTTwoSidedP(Number.NaN, 3), "studentTTwoSidedP requires a number; got NaN"],
  [() => fUpperTail(-1, 2, 3), "fUpperTail requires a value of 0 or more; got -1"],
  [
    () => chiSquareUpperTail(1, 1.5),
    "chiSquareUpperTail requires a positive whole number of degrees of freedom; got 1.5",
  ],
])("a caller's mistake throws what it got: %#", (call, message) => {
  expect(call).toThrow(new RangeError(message));
});

test("tails at the ends of the line are 1 and 0", () => {
  expect([fUpperTail(0, 2, 3), chiSquareUpperTail(0, 3), studentTTwoSidedP(0, 3)]).toEqual([1, 1, 1]);
  expect([
    fUpperTail(Number.POSITIVE_INFINITY, 2, 3),
    chiSquareUpperTail(Number.POSITIVE_INFINITY, 3),
    studentTTwoSidedP(Number.NEGATIVE_INFINITY, 3),
  ]).toEqual([0, 0, 0]);
});
