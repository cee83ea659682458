import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { moreRunsAfter, runsEachSide, trialPower } from "../../../src/analysis/beforeAfter/trialPower.ts";
import { twoSample } from "../../../src/analysis/beforeAfter/twoSample.ts";
import { normalDraws } from "../../../src/analysis/normalDraws.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";

describe("trialPower and runsEachSide", () => {
  test("are each other's inverse", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.15, max: 2.5, noNaN: true }),
        fc.double({ min: 0.3, max: 0.97, noNaN: true }),
        (difference, power) => {
          const runs = runsEachSide({ difference, spread: 1, power });
          if (runs === null || runs <= 2) return;
          expect(trialPower(runs, { difference, spread: 1 })).toLieWithin(power, 1e-9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("only the ratio of difference to spread counts", () => {
    expect(runsEachSide({ difference: 3, spread: 6, power: 0.8 })).toAgreeWithin(
      runsEachSide({ difference: 0.5, spread: 1, power: 0.8 }) ?? 0,
      1e-9,
    );
  });

  test("say in how many trials of that size a t test does tell the difference", () => {
    const draw = normalDraws(seededRandom(11));
    const trials = 2000;
    let told = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      const first = Array.from({ length: 12 }, draw);
      const second = Array.from({ length: 12 }, () => draw() + 1);
      if (twoSample(first, second, { pooled: true }).low > 0) told += 1;
    }
    // Three standard errors of a share of 2,000.
    expect(told / trials).toLieWithin(trialPower(12, { difference: 1, spread: 1 }), 0.034);
  });

  test("give null where no house makes so many runs, and throw on what is no trial", () => {
    expect(runsEachSide({ difference: 0.001, spread: 1, power: 0.9 })).toBeNull();
    expect(() => runsEachSide({ difference: 0, spread: 1, power: 0.8 })).toThrow(RangeError);
    expect(() => runsEachSide({ difference: 1, spread: 1, power: 1 })).toThrow(RangeError);
    expect(() => trialPower(1, { difference: 1, spread: 1 })).toThrow(RangeError);
  });
});

describe("moreRunsAfter(comparison, difference, power)", () => {
  const comparison = { runsBefore: 30, runsAfter: 6, standardError: 0.45, degreesOfFreedom: 32 };

  test("agrees with the plain two-sample plan where both sides are to be alike", () => {
    const wanted = Math.ceil(runsEachSide({ difference: 1, spread: 1, power: 0.8 }) ?? 0);
    const now = {
      runsBefore: wanted,
      runsAfter: 5,
      standardError: Math.sqrt(1 / wanted + 1 / 5),
      degreesOfFreedom: wanted + 3,
    };
    expect(moreRunsAfter(now, 1, 0.8)).toBe(wanted - 5);
  });

  test("asks for fewer where the difference is larger, and none where it is told already", () => {
    const few = moreRunsAfter(comparison, 1.4, 0.8);
    const many = moreRunsAfter(comparison, 1, 0.8);
    expect(few).not.toBeNull();
    expect(many ?? 0).toBeGreaterThan(few ?? Number.POSITIVE_INFINITY);
    expect(moreRunsAfter(comparison, 5, 0.8)).toBe(0);
  });

  test("is null where the runs before are too few for any number after", () => {
    expect(moreRunsAfter({ ...comparison, runsBefore: 5 }, 0.5, 0.8)).toBeNull();
  });
});
