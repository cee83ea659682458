import { beforeAll, describe, expect, test } from "vitest";
import { bedDepthTruthHoursPerCentimetre } from "../../../scripts/demo/simulateHouse.ts";
import { CHANGE_WITHOUT_EFFECT, DEMO_SEED, SHALLOWER_BED } from "../../../scripts/demo/truths.ts";
import { mean } from "../../../src/analysis/summary.ts";
import { reportFromFolder } from "../../../src/report/atBuild.ts";
import type { ChangeResult } from "../../../src/report/changesResult.ts";
import type { Report } from "../../../src/report/report.ts";
import { effectOf } from "./changedHouse.ts";

let report: Report;
beforeAll(async () => {
  report = (await reportFromFolder("data/demo", "2026-10")).report;
});

const changeOf = (on: string): ChangeResult => {
  const found = report.changes.changes.find(({ id }) => id === `change-${on}`);
  if (found === undefined) throw new Error(`the demo has lost its change of ${on}`);
  return found;
};

describe("the changes of the invented house, whose truth is known", () => {
  test("the shallower bed: the total effect's interval holds depth's own effect times the change of depth, and is near it", () => {
    const hours = effectOf(changeOf(SHALLOWER_BED.on), "kiln_hours");
    const depths = new Map(
      report.loads.flatMap(({ runs, bedDepthMetres }) => runs.map((run) => [run, bedDepthMetres])),
    );
    const side = (after: boolean): number =>
      mean(hours.points.filter(({ isAfter }) => isAfter === after).map(({ run }) => depths.get(run) ?? Number.NaN));
    const centimetres = 100 * (side(true) - side(false));
    // The house meant to lay it 1.8 cm shallower.
    expect(centimetres).toLieWithin(100 * (SHALLOWER_BED.afterMetres - SHALLOWER_BED.beforeMetres), 0.5);
    const truth = centimetres * bedDepthTruthHoursPerCentimetre(DEMO_SEED);
    expect(truth).toBeLessThan(-0.8);
    expect(hours.total.low).toBeLessThanOrEqual(truth);
    expect(hours.total.high).toBeGreaterThanOrEqual(truth);
    expect(hours.total.estimate).toLieWithin(truth, 0.5);
    expect(hours.verdict).toBe("helped");
  });

  test("nothing is left of it beyond depth", () => {
    const { beyond } = effectOf(changeOf(SHALLOWER_BED.on), "kiln_hours");
    expect(beyond?.low).toBeLessThan(0);
    expect(beyond?.high).toBeGreaterThan(0);
    expect(Math.abs(beyond?.estimate ?? 9)).toBeLessThan(0.5);
  });

  test("it warns of the belt that was mended at the end of the comparison, and that loads are smaller", () => {
    const kinds = changeOf(SHALLOWER_BED.on).warnings.map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(["another event", "load size"]));
    expect(changeOf(SHALLOWER_BED.on).warnings.some(({ what }) => what.includes("ends with a repair"))).toBe(true);
  });

  test("the change without effect is said to make no difference in anything it can have touched", () => {
    const { effects } = changeOf(CHANGE_WITHOUT_EFFECT.on);
    expect(effects.map(({ measure }) => measure)).toEqual(["kiln_hours", "final_moisture_pct", "energy_kwh"]);
    for (const { verdict, total } of effects) {
      expect(verdict).toBe("no difference");
      expect(total.low).toBeLessThan(0);
      expect(total.high).toBeGreaterThan(0);
    }
  });
});
