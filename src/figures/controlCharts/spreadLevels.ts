import type { RenderFunction } from "@observablehq/plot";
import type { SpreadPoint } from "../../analysis/controlCharts/sChart.ts";
import type { ChartedRun } from "../../report/controlChartResult.ts";
import { layer } from "../layer.ts";

/** Limits of the spread within batches of one number of samples, over a stretch of time. */
export interface SpreadLevel {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly centre: number;
  readonly low: number;
  readonly high: number;
}

/** More steps than this are a comb: then each number of samples has its own line over the whole time. */
const MOST_STEPS = 12;

/**
 * Limits that follow each batch's number of samples: steps half-way between batches where it changes seldom, else one
 * level for each number of samples, side by side.
 *
 * @param end how far the last step goes
 */
export function spreadLevels(
  runs: readonly ChartedRun[],
  points: readonly SpreadPoint[],
  end: number,
): readonly SpreadLevel[] {
  const sampled = runs.flatMap((run, index): SpreadLevel[] => {
    const point = points[index];
    if (!point || point.centre === null || point.low === null || point.high === null) return [];
    const { count, centre, low, high } = point;
    return [{ from: run.at, to: run.at, count, centre, low, high }];
  });
  const steps: SpreadLevel[] = [];
  for (const level of sampled) {
    const last = steps.at(-1);
    if (last?.count === level.count) steps[steps.length - 1] = { ...last, to: level.to };
    else {
      const turn = last ? (last.to + level.from) / 2 : level.from;
      if (last) steps[steps.length - 1] = { ...last, to: turn };
      steps.push({ ...level, from: turn });
    }
  }
  const start = sampled[0]?.from ?? end;
  if (steps.length <= MOST_STEPS) {
    return steps.map((step, i) => (i === steps.length - 1 ? { ...step, to: end } : step));
  }
  const byCount = new Map(sampled.map((level) => [level.count, level]));
  return [...byCount.values()].sort((a, b) => a.count - b.count).map((level) => ({ ...level, from: start, to: end }));
}

/** Upper and lower limits dashed, the usual spread in ink. A lower limit of 0 is the foot of the frame. */
export function spreadMarks(levels: readonly SpreadLevel[]): readonly RenderFunction[] {
  const across = (className: string, heights: (level: SpreadLevel) => readonly number[]): RenderFunction =>
    layer(className, ({ x, y, pen }) => [
      pen.element("path", {
        d: levels.flatMap((level) => heights(level).map((at) => `M${x(level.from)},${y(at)}H${x(level.to)}`)).join(""),
      }),
    ]);
  return [
    across("limit", ({ low, high }) => (low > 0 ? [high, low] : [high])),
    across("rule centre", ({ centre }) => [centre]),
  ];
}
