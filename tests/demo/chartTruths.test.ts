import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ChartDesk, openChartDesk } from "../../scripts/demo/chartDesk.ts";
import { type ChartTruths, chartTruths } from "../../scripts/demo/chartTruths.ts";
import { quietSignalPoint95 } from "../../scripts/demo/quietSignals.ts";
import { simulateHouse } from "../../scripts/demo/simulateHouse.ts";
import { trueBatches } from "../../scripts/demo/trueBatches.ts";
import { DEMO_SEED, MIS_SET_SCALE } from "../../scripts/demo/truths.ts";
import { ruleChoice } from "../../src/analysis/controlCharts/ruleChoice.ts";
import { runLength } from "../../src/analysis/controlCharts/runLength.ts";
import { signalCountQuantile } from "../../src/analysis/controlCharts/runLengthDistribution.ts";

// Not evidence about malting: the invented house is asked whether its charts find what was put into it.

describe("trueBatches", () => {
  const faulty = trueBatches(simulateHouse({ seed: 7 }));
  const mended = trueBatches(simulateHouse({ seed: 7, mended: ["slipping belt", "mis-set scale"] }));

  test("a mis-set scale shows its share of the yield, and changes no other batch and no moisture", () => {
    const misset = [...faulty.values()].filter(({ faults }) => faults.has("mis-set scale"));
    expect(misset).toHaveLength(1);
    for (const [run, batch] of faulty) {
      const sound = mended.get(run);
      if (batch.faults.has("slipping belt")) continue;
      expect(batch.finalMoisturePercent, run).toBe(sound?.finalMoisturePercent);
      const share = batch.dryMatterYieldPercent / (sound?.dryMatterYieldPercent ?? Number.NaN);
      // Masses are written down to half a kilogram.
      expect(share, run).toAgreeWithin(batch.faults.has("mis-set scale") ? MIS_SET_SCALE.share : 1, 0.004);
    }
  });

  test("a slipping belt leaves beds damper on the whole, and takes no dry matter", () => {
    const slipped = [...faulty.values()].filter(({ faults }) => faults.has("slipping belt"));
    expect(slipped.length).toBeGreaterThanOrEqual(8);
    const damper = slipped.map(
      ({ run, finalMoisturePercent }) => finalMoisturePercent - (mended.get(run)?.finalMoisturePercent ?? Number.NaN),
    );
    expect(damper.reduce((sum, points) => sum + points, 0) / damper.length).toBeGreaterThan(0.2);
    for (const { run, dryMatterYieldPercent } of slipped) {
      expect(dryMatterYieldPercent, run).toLieWithin(mended.get(run)?.dryMatterYieldPercent ?? Number.NaN, 0.4);
    }
  });
});

describe("quietSignalPoint95", () => {
  const choice = ruleChoice();

  test("comes to the point for known limits where the baseline is very long", () => {
    for (const runs of [30, 400]) {
      const known = signalCountQuantile(runLength(choice).distribution, runs, 0.95);
      expect(quietSignalPoint95(choice, [100_000], runs)).toBe(known);
    }
  });

  test("allows more signals of a short baseline, and no fewer in a longer stretch", () => {
    expect(quietSignalPoint95(choice, [10], 200)).toBeGreaterThan(quietSignalPoint95(choice, [100_000], 200));
    expect(quietSignalPoint95(choice, [24, 24], 200)).toBeGreaterThanOrEqual(quietSignalPoint95(choice, [24, 24], 40));
  });
});

describe("the charts of simulated houses", () => {
  let desk: ChartDesk;
  const truths: ChartTruths[] = [];
  beforeAll(async () => {
    desk = await openChartDesk();
    for (const seed of [DEMO_SEED, 1, 2]) truths.push(await chartTruths(desk, seed));
  }, 60_000);
  afterAll(() => desk.close());

  test("signal the mis-set scale's batch itself, which a shift of its size asks for", () => {
    for (const { seed, scale } of truths) {
      expect(scale?.point95, String(seed)).toBe(1);
      expect(scale?.seenAfter, String(seed)).toBe(1);
    }
  });

  // Over 200 houses of the bench three in four do by then: chartTruths.ts of the bench says what keeps the others.
  test("signal the slipping belt by the 95 % point of its run length in the demo and in one of two more houses", () => {
    for (const { seed, belt } of truths) {
      expect(belt?.size, String(seed)).toBeGreaterThan(1);
      expect(belt?.size, String(seed)).toBeLessThan(3.5);
    }
    expect(truths[0]?.belt?.seenInTime).toBe(true);
    expect(truths.filter(({ belt }) => belt?.seenInTime).length).toBeGreaterThanOrEqual(2);
  });

  test("raise no more signals before any fault than 95 houses in 100 would by chance", () => {
    const stretches = truths.flatMap(({ beforeAnyFault }) => beforeAnyFault);
    expect(stretches).toHaveLength(2 * truths.length);
    for (const { batches, signals, point95 } of stretches) {
      expect(batches).toBeGreaterThan(20);
      expect(signals).toBeLessThanOrEqual(point95);
      // A point that anything stays under would prove nothing.
      expect(point95).toBeLessThanOrEqual(2);
    }
  });
});
