import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { changePower } from "../../../src/analysis/drift/changePower.ts";
import { type DriftAlarm, type DriftAlarmInput, driftAlarm } from "../../../src/analysis/drift/driftAlarm.ts";
import { driftAlarmSettings } from "../../../src/analysis/drift/driftAlarmSettings.ts";
import { quietPower } from "../../../src/analysis/drift/quietPower.ts";
import { isFitFault, sayFitFault } from "../../../src/analysis/fitFault.ts";
import { scattered } from "./series.ts";

function alarm(input: DriftAlarmInput): DriftAlarm {
  const found = driftAlarm(input);
  if (isFitFault(found)) throw new Error(sayFitFault(found));
  return found;
}

const { baselineLoads, baselineLoadsWithEarlier, weight, limit } = driftAlarmSettings;
const seeds = fc.integer({ min: 0, max: 100_000 });
/** A creep after load 20, and scatter. */
const creep = (seed: number, perLoad = 0.1) =>
  scattered(
    Float64Array.from({ length: 50 }, (_, at) => perLoad * Math.max(0, at - 20)),
    0.4,
    seed,
  );

describe("driftAlarm(loads)", () => {
  test("limits hold the variance of a weighted mean about a level that ten loads gave", () => {
    const { weightedMean, baseline } = alarm({ values: creep(1) });
    const reachOf = (load: number): number => {
      const keep = 1 - weight;
      const own = (weight / (2 - weight)) * (1 - keep ** (2 * load));
      return baseline.sigma * Math.sqrt(own + (1 - keep ** load) ** 2 / baselineLoads);
    };
    const widened = (weightedMean.reach[0] as number) / reachOf(1);
    expect(widened).toBeGreaterThan(limit);
    weightedMean.reach.forEach((reach, at) => {
      expect(reach).toAgreeWithin(widened * reachOf(at + 1), 1e-12);
    });
  });

  test("that variance is the one simulated: a weighted mean of 15 loads about the mean of ten", () => {
    let squares = 0;
    const houses = 4000;
    for (let seed = 1; seed <= houses; seed += 1) {
      const values = scattered(new Float64Array(25), 1, seed);
      const level = values.subarray(0, 10).reduce((sum, value) => sum + value, 0) / 10;
      let mean = 0;
      for (const value of values.subarray(10)) mean += weight * (value - level - mean);
      squares += mean * mean;
    }
    const keep = 1 - weight;
    const variance = (weight / (2 - weight)) * (1 - keep ** 30) + (1 - keep ** 15) ** 2 / 10;
    // The standard error of a variance from 4,000 values is 2.2 %.
    expect(squares / houses).toAgreeWithin(variance, 0.07);
  });

  test("shifted and scaled offsets raise the same alarms; upside down, the same on the other side", () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: -40, max: 40 }), fc.integer({ min: 1, max: 9 }), (seed, shift, scale) => {
        const values = creep(seed);
        const plain = alarm({ values }).alarms;
        expect(alarm({ values: values.map((value) => scale * value + shift) }).alarms).toEqual(plain);
        const turned = alarm({ values: values.map((value) => -value) }).alarms;
        expect(turned.map(({ direction }) => direction)).toEqual(
          plain.map(({ direction }) => (direction === "up" ? "down" : "up")),
        );
        expect(turned.map(({ raisedAt }) => raisedAt)).toEqual(plain.map(({ raisedAt }) => raisedAt));
      }),
    );
  });

  test("an alarm rests on what was known when it was raised: later loads do not move it", () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 30, max: 49 }), (seed, known) => {
        const values = creep(seed);
        const first = alarm({ values }).alarms[0];
        const then = alarm({ values: values.subarray(0, known) }).alarms[0];
        if (first && first.raisedAt < known) expect(then?.raisedAt).toBe(first.raisedAt);
        else expect(then).toBeUndefined();
      }),
    );
  });

  test("earlier stretches tell the spread and shorten the baseline; their level says nothing", () => {
    const values = creep(3);
    const earlier = scattered(new Float64Array(30), 0.4, 9);
    const alone = alarm({ values });
    const pooled = alarm({ values, earlier: [earlier] });
    expect(alone.baseline.loads).toBe(baselineLoads);
    expect(pooled.baseline.loads).toBe(baselineLoadsWithEarlier);
    expect(pooled.baseline.degreesOfFreedom).toBeGreaterThan(2 * alone.baseline.degreesOfFreedom);
    const moved = alarm({ values, earlier: [earlier.map((value) => value + 64)] });
    expect(moved.alarms).toEqual(pooled.alarms);
    expect(moved.baseline.sigma).toAgreeWithin(pooled.baseline.sigma, 1e-12);
  });

  test("a load read worse than usual is judged by wider limits", () => {
    const values = creep(4);
    const errors = new Float64Array(50).fill(0.1);
    const same = alarm({ values, standardErrors: errors });
    expect(same.weightedMean.reach).toEqual(alarm({ values }).weightedMean.reach);
    const worse = alarm({ values, standardErrors: errors.with(30, 2) });
    expect(worse.weightedMean.reach[30 - baselineLoads] as number).toBeGreaterThan(
      (same.weightedMean.reach[30 - baselineLoads] as number) * 1.2,
    );
  });

  test("says in a sentence that the baseline is not full, or that nothing varies", () => {
    const say = (values: Float64Array) => {
      const found = driftAlarm({ values });
      return isFitFault(found) ? sayFitFault(found, { observations: "loads", response: "offset" }) : null;
    };
    expect(say(new Float64Array(7))).toBe(
      `The estimate needs ${baselineLoads + 1} loads with all that it uses; so far there are 7.`,
    );
    expect(say(new Float64Array(30).fill(1))).toMatch(/same offset/);
  });

  test("refuses broken values and standard errors", () => {
    expect(() => driftAlarm({ values: [1, Number.NaN] })).toThrow(RangeError);
    expect(() => driftAlarm({ values: [1, 2], standardErrors: [1] })).toThrow(RangeError);
    expect(() => driftAlarm({ values: [1, 2], standardErrors: [1, -1] })).toThrow(RangeError);
  });
});

describe("changePower and quietPower, on seeds that chose nothing", () => {
  const houses = Array.from({ length: 150 }, (_, at) => 40_000 + at);

  test.each([0, 30])("with %i earlier loads quiet houses cry wolf at most once in 100 loads", (earlierLoads) => {
    const quiet = quietPower(houses, { earlierLoads });
    expect(quiet.loads).toBe(15_000);
    expect(quiet.alarms).toBeGreaterThan(0);
    expect(quiet.alarms / quiet.loads).toBeLessThan(0.01);
    // The models are given no clear change where there is none.
    expect(quiet.givenClearChange.count).toBeLessThan(5);
  });

  test.each([0.5, 1])(
    "a creep of %f a month is alarmed before it leaves 2 °C in 90 of 100 houses or more",
    (perMonth) => {
      const { alarmedBefore } = changePower({ kind: "creep", perMonth }, houses);
      expect(alarmedBefore?.of).toBe(150);
      expect(alarmedBefore?.count).toBeGreaterThanOrEqual(135);
    },
  );

  test("a month after the alarm intervals of onset, slope and date hold the truth in about 95 of 100", () => {
    const power = changePower({ kind: "creep", perMonth: 1 }, houses);
    for (const share of [power.onsetCovered, power.sizeCovered, power.dateCovered]) {
      // Binomial with 95 %: 133 or more of 150 in 99.9 of 100 such studies.
      expect((share?.count ?? 0) / (share?.of ?? 1)).toBeGreaterThan(132 / 150);
    }
    expect(power.clearlyWrong.count).toBeLessThan(power.clearlyRight.count / 10);
  });

  test("a larger slip is found sooner", () => {
    const waits = [1, 2, 3].map((size) => changePower({ kind: "slip", size }, houses).loadsUntilAlarm.nineInTen);
    expect(waits[0] as number).toBeGreaterThan(waits[1] as number);
    expect(waits[1] as number).toBeGreaterThanOrEqual(waits[2] as number);
    expect(waits[2] as number).toBeLessThanOrEqual(3);
  });

  test("an alarm ends ten to twenty loads after its offsets are back in 8 of 10 houses, and stands where they stay away", () => {
    const { endsAfterLoads } = driftAlarmSettings;
    const ends = (offsets: Float64Array, seed: number): number | null | undefined =>
      alarm({ values: scattered(offsets, 0.4, seed) }).alarms.find(
        ({ direction, from, to }) => direction === "up" && from <= 40 && to >= 40,
      )?.endedAt;
    let ended = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const there = Float64Array.from({ length: 90 }, (_, at) => (at >= 30 && at < 50 ? 2 : 0));
      const endedAt = ends(there, seed);
      // Not before: until then none of the ten lies after the last load that was away.
      if (typeof endedAt === "number") expect(endedAt).toBeGreaterThanOrEqual(49 + endsAfterLoads);
      if (typeof endedAt === "number" && endedAt < 50 + 2 * endsAfterLoads) ended += 1;
      expect(
        ends(
          there.map((offset, at) => (at >= 50 ? 2 : offset)),
          seed,
        ),
      ).toBeNull();
    }
    expect(ended).toBeGreaterThanOrEqual(48);
  });

  test("a creep that goes on never ends its alarm", () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const [first] = alarm({ values: creep(seed) }).alarms.filter(({ direction }) => direction === "up");
      if (first && first.raisedAt > 20) expect(first.endedAt).toBeNull();
    }
  });

  test("tests that are asked again after every load flag far more quiet houses than the charts alarm", () => {
    const quiet = quietPower(houses);
    expect(quiet.flaggedByMannKendall.count).toBeGreaterThan(0.4 * houses.length);
    expect(quiet.flaggedByMannKendall.count).toBeLessThan(0.65 * houses.length);
    expect(quiet.housesAlarmed.count).toBeLessThan(0.75 * quiet.flaggedByMannKendall.count);
  });
});
