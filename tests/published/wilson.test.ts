import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { wilsonInterval } from "../../src/analysis/wilsonInterval.ts";

interface WilsonCase {
  readonly successes: number;
  readonly trials: number;
  readonly level: number;
  readonly low: number;
  readonly high: number;
}

// R 4.2.2, prop.test(x, n, conf.level, correct = FALSE), made by reference/r_further.R.
const { cases }: { readonly cases: readonly WilsonCase[] } = JSON.parse(
  readFileSync(new URL("reference/r_further.json", import.meta.url), "utf8"),
).wilson;

test.each(cases)(
  "wilsonInterval($successes, $trials, $level) agrees with R",
  ({ successes, trials, level, low, high }) => {
    const share = wilsonInterval(successes, trials, level);
    expect(share.estimate).toBe(successes / trials);
    expect(share.low).toLieWithin(low, 1e-12);
    expect(share.high).toLieWithin(high, 1e-12);
  },
);

test("wilsonInterval(10, 100) runs from 5.5 to 17.4 per cent", () => {
  // Often printed as the textbook example of the score interval (from memory).
  const { low, high } = wilsonInterval(10, 100);
  expect(100 * low).toLieWithin(5.5, 0.05);
  expect(100 * high).toLieWithin(17.4, 0.05);
});

test("wilsonInterval(successes, trials) refuses what cannot have been counted", () => {
  expect(() => wilsonInterval(0, 0)).toThrow(new RangeError("wilsonInterval requires at least one trial; got 0"));
  expect(() => wilsonInterval(4, 3)).toThrow(new RangeError("wilsonInterval requires successes from 0 to 3; got 4"));
  expect(() => wilsonInterval(1.5, 3)).toThrow(RangeError);
});
