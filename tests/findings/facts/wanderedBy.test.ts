import { describe, expect, it } from "vitest";
import { shiftOf, wanderedBy } from "../../../src/findings/facts/effectMean.ts";

describe("wanderedBy(earlier, latest)", () => {
  it("judges a mean by the means of as many in a row, which wander where neighbours are alike", () => {
    // Ten stretches of six at levels of their own: single values are many, levels only ten.
    const earlier = Array.from({ length: 60 }, (_, at) => (Math.floor(at / 6) % 2 === 0 ? 0.3 : -0.3));
    const latest = [0.7, 0.7, 0.7, 0.7, 0.7, 0.7];
    const wandered = wanderedBy(earlier, latest);
    // By hand: ten means of ±0.3 scatter by √(10 × 0.09 / 9); the mean of six more and of all ten together by √1.1 times that.
    const reach = 1.96 * Math.sqrt(0.1) * Math.sqrt(1.1);
    expect(wandered?.estimate).toAgreeWithin(0.7, 1e-12);
    expect(wandered?.high).toAgreeWithin(0.7 + reach, 1e-12);
    // As if each value stood by itself it would seem more than twice as sure.
    expect(shiftOf(earlier, latest)?.low).toBeGreaterThan(0.4);
    expect(wandered?.low).toBeLessThan(0.06);
  });

  it("says nothing where fewer than eight such stretches lie before", () => {
    expect(wanderedBy(new Array(47).fill(0), [1, 1, 1, 1, 1, 1])).toBeNull();
  });
});
