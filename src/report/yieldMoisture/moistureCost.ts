import { median } from "../../analysis/summary.ts";
import type { MoistureCost } from "../controlChartResult.ts";
import type { LoadRow } from "../loadRow.ts";
import { aimOf } from "../targetMoisture.ts";
import { nearestTarget, type TargetRow } from "../targetRow.ts";
import type { MeasuredRun } from "./measuredRuns.ts";

const DAYS_PER_YEAR = 365.25;
const DAY = 86_400_000;
const FEWEST_BATCHES = 12;

/**
 * What moisture off target costs a year. Malt dried below its target weighs less by the water it could have been sold
 * with: dry matter is the same, so mass × (1 − M) / (1 − target) − mass. Malt above the highest accepted is refused.
 *
 * @returns null below twelve batches with malt mass and a target, or where they span less than a month
 */
export function moistureCost(
  runs: readonly MeasuredRun[],
  targets: readonly TargetRow[],
  loads: readonly LoadRow[],
): MoistureCost | null {
  const known = runs.flatMap(({ row, value, at }) => {
    const target = nearestTarget(targets, "final_moisture_pct", row.variety, row.grain);
    const aim = target === null ? null : aimOf(target);
    const malt = row.maltKilograms;
    return target === null || aim === null || malt === null ? [] : [{ value, at, malt, aim, highest: target.high }];
  });
  const first = known[0]?.at ?? 0;
  const years = ((known.at(-1)?.at ?? 0) - first) / DAY / DAYS_PER_YEAR;
  if (known.length < FEWEST_BATCHES || years < 1 / 12) return null;
  const driedAway = known.map(({ value, malt, aim }) => Math.max(0, (malt * (100 - value)) / (100 - aim) - malt));
  const refused = known.filter(({ value, highest }) => highest !== null && value > highest);
  const perKilogram = loads.flatMap(({ energyKilowattHours: energy, waterRemovedKilograms: water }) =>
    energy !== null && water !== null && water > 0 ? [energy / water] : [],
  );
  const lost = driedAway.reduce((sum, kilograms) => sum + kilograms, 0) / years;
  return {
    batches: known.length,
    years,
    targetPercent: median(known.map(({ aim }) => aim)),
    driedAwayKilogramsPerYear: lost,
    refusedBatches: refused.length,
    refusedKilogramsPerYear: refused.reduce((sum, { malt }) => sum + malt, 0) / years,
    energyKilowattHoursPerYear: perKilogram.length === 0 ? null : lost * median(perKilogram),
  };
}
