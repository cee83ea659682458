import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allSteps } from "../../src/analysis/allSteps.ts";
import { brierComparison, reliabilityGroups } from "../../src/analysis/brierComparison.ts";
import { brownForsythe } from "../../src/analysis/brownForsythe.ts";
import { foretell } from "../../src/analysis/consistency/consistency.ts";
import { drawLots, together } from "../../src/analysis/consistency/lotBootstrap.ts";
import { seededRandom } from "../../src/analysis/seededRandom.ts";
import { varianceSplit } from "../../src/analysis/varianceSplit.ts";
import { gaussian } from "./gaussian.ts";

const groups = fc
  .array(fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 2, maxLength: 6 }), {
    minLength: 2,
    maxLength: 8,
  })
  .filter((lists) => lists.every((list) => Math.max(...list) - Math.min(...list) > 0.1));

describe("varianceSplit(groups)", () => {
  it("is not moved by a shift, goes with the unit, and does not see the order of groups", () => {
    fc.assert(
      fc.property(groups, fc.double({ min: 0.1, max: 10, noNaN: true }), (lists, scale) => {
        const plain = varianceSplit(lists);
        const moved = varianceSplit(lists.map((list) => list.map((value) => 30 + scale * value)).reverse());
        expect(moved.within.estimate).toAgreeWithin(scale * plain.within.estimate, 1e-9);
        expect(moved.between.high).toLieWithin(scale * plain.between.high, 1e-6 * scale);
        expect(moved.shareBetween.estimate).toLieWithin(plain.shareBetween.estimate, 1e-6);
      }),
    );
  });

  it("holds the truth in about 95 of 100 houses, with lots of unequal size", () => {
    // A made-up house: 8 lots of 3 to 10 batches, spread 0.6 between lots and 1 within. 400 houses: three standard errors
    // of a share of 0.95 are 0.033; the interval between lots is known to be a little too wide.
    const random = seededRandom(77);
    const [between, within] = [0.6, 1];
    let held = { between: 0, within: 0, share: 0 };
    const houses = 400;
    for (let house = 0; house < houses; house += 1) {
      const lots = Array.from({ length: 8 }, () => {
        const level = between * (gaussian(random, 1)[0] as number);
        return Array.from(gaussian(random, 3 + random.below(8)), (value) => level + within * value);
      });
      const split = varianceSplit(lots);
      const holds = ({ low, high }: { low: number; high: number }, truth: number): number =>
        low <= truth && truth <= high ? 1 : 0;
      held = {
        between: held.between + holds(split.between, between),
        within: held.within + holds(split.within, within),
        share: held.share + holds(split.shareBetween, between ** 2 / (between ** 2 + within ** 2)),
      };
    }
    for (const count of Object.values(held)) {
      expect(count / houses).toBeGreaterThan(0.917);
      expect(count / houses).toBeLessThan(0.99);
    }
  });

  it("refuses what cannot be split", () => {
    expect(() => varianceSplit([[1, 2, 3]])).toThrow(RangeError);
    expect(() => varianceSplit([[1], [2]])).toThrow(RangeError);
    expect(() =>
      varianceSplit([
        [1, 1],
        [2, 2],
      ]),
    ).toThrow(/vary/);
  });
});

describe("brownForsythe(groups)", () => {
  it("finds the one that spreads, and nothing in groups that differ by their level alone", () => {
    const base = [-2, -1, 0, 1, 2, 3];
    const shifted = [base, base.map((value) => value + 50), base.map((value) => value - 9)];
    expect(brownForsythe(shifted)?.p).toBeGreaterThan(0.99);
    expect(brownForsythe([...shifted, base.map((value) => value * 8)])?.p).toBeLessThan(0.001);
    expect(
      brownForsythe([
        [1, 1],
        [2, 2],
      ]),
    ).toBeNull();
  });
});

describe("brierComparison(said, other, came)", () => {
  it("is 0 for a seer and 1 for one who is always wrong", () => {
    const came = [true, false, true, true, false, true];
    const seer = came.map((event) => (event ? 1 : 0));
    const compared = brierComparison(
      seer,
      seer.map((chance) => 1 - chance),
      came,
    );
    expect(compared?.brierScore).toBe(0);
    expect(compared?.brierOfOther).toBe(1);
  });

  it("agrees with the sum worked by hand, and needs five events", () => {
    const came = [true, false, true, false, true];
    const compared = brierComparison([0.8, 0.3, 0.6, 0.1, 0.9], [0.5, 0.5, 0.5, 0.5, 0.5], came);
    // (0.04 + 0.09 + 0.16 + 0.01 + 0.01) / 5.
    expect(compared?.brierScore).toAgreeWithin(0.062, 1e-12);
    expect(compared?.difference.estimate).toAgreeWithin(0.062 - 0.25, 1e-12);
    expect(brierComparison([0.8], [0.5], [true])).toBeNull();
    expect(() => brierComparison([1.2, 0, 0, 0, 0], [0, 0, 0, 0, 0], came)).toThrow(RangeError);
  });

  it("groups forecasts by what was said, all of them once", () => {
    const random = seededRandom(3);
    const said = Array.from({ length: 53 }, () => random.uniform());
    const found = reliabilityGroups(
      said,
      said.map((chance) => random.uniform() < chance),
    );
    expect(found).toHaveLength(5);
    expect(found.reduce((sum, { forecasts }) => sum + forecasts, 0)).toBe(53);
    expect(found.map((group) => group.said)).toEqual(found.map((group) => group.said).sort((a, b) => a - b));
    expect(reliabilityGroups(said.slice(0, 7), [])).toHaveLength(1);
  });
});

describe("drawLots(lots, others, limits, factor, estimate)", () => {
  const limits = [{ low: -2, high: 2, below: 2, above: 2, leastSpread: 0 }];
  const others = [{ squares: 40, degreesOfFreedom: 40 }];
  const lotsAt = (levels: readonly number[]) => levels.map((mean) => [{ count: 5, mean, squares: 4 }]);
  const interval = (levels: readonly number[]) =>
    allSteps(drawLots(lotsAt(levels), others, limits, [1], { onTarget: 0.9, even: 0.9 }))?.onTarget;

  it("gives the same interval each time, and a wider one where lots lie further apart", () => {
    const near = interval([0, 0.1, -0.1, 0.05, -0.05, 0]);
    const far = interval([0, 2, -2, 1, -1, 0]);
    expect(interval([0, 0.1, -0.1, 0.05, -0.05, 0])).toEqual(near);
    expect((far?.high ?? 0) - (far?.low ?? 0)).toBeGreaterThan((near?.high ?? 1) - (near?.low ?? 0));
  });

  it("does not let rounding decide on which side of the estimate a draw of every lot once lies", () => {
    // Of three lots two draws in nine are all three again.
    const lots = lotsAt([0, 1.5, -0.8]);
    const whole = foretell([together(lots.flat())], others, limits, [1], 67);
    const around = (rounding: number) => {
      const onTarget = (whole?.onTarget ?? Number.NaN) + rounding;
      return allSteps(drawLots(lots, others, limits, [1], { onTarget, even: onTarget }))?.onTarget;
    };
    const [below, above] = [around(-1e-13), around(1e-13)];
    expect(below?.low).toLieWithin(above?.low ?? Number.NaN, 1e-12);
    expect(below?.high).toLieWithin(above?.high ?? Number.NaN, 1e-12);
  });
});
