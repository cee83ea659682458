import { capability } from "../../analysis/controlCharts/capability.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import type { Capability, ChartedMeasure } from "../controlChartResult.ts";
import { nearestTarget, type TargetRow } from "../targetRow.ts";
import type { MeasuredRun } from "./measuredRuns.ts";

const percent = ({ estimate, low, high }: Interval): Interval => ({
  estimate: 100 * estimate,
  low: 100 * low,
  high: 100 * high,
});

/**
 * How each variety lies within its specification, by name. A variety without a limit on either side, with fewer than five
 * batches or with batches that are all the same is not in the list.
 */
export function capabilities(
  measure: ChartedMeasure,
  runs: readonly MeasuredRun[],
  targets: readonly TargetRow[],
): readonly Capability[] {
  const varieties = [...new Set(runs.map(({ variety }) => variety))].sort();
  return varieties.flatMap((variety): Capability[] => {
    const own = runs.filter((run) => run.variety === variety);
    const target = nearestTarget(targets, measure, variety, own[0]?.row.grain ?? null);
    if (target === null || (target.low === null && target.high === null)) return [];
    if (target.low !== null && target.high !== null && target.low >= target.high) return [];
    const found = capability(
      own.map(({ value }) => value),
      target,
    );
    if (found === null) return [];
    return [
      {
        variety,
        runs: found.count,
        low: target.low,
        target: target.target,
        high: target.high,
        cpk: found.cpk,
        get expectedOutsidePercent() {
          return percent(found.expectedOutside);
        },
        seenOutside: found.seenOutsideCount,
        seenOutsidePercent: percent(found.seenOutside),
      },
    ];
  });
}
