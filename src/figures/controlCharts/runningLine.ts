import type { RenderFunction } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { layer } from "../layer.ts";
import { MOST_LINKED_MARKS } from "../scatter.ts";
import { pathThrough, thinSeries } from "../thinSeries.ts";

interface At {
  readonly x: number;
  readonly y: number;
}

/** Values of runs in time order, cut where a phase begins, since running sums start anew there. */
export function byPhase(chart: ControlChart, values: ArrayLike<number>): readonly (readonly At[])[] {
  const parts: At[][] = [];
  let phase = -1;
  chart.runs.forEach((run, index) => {
    const y = values[index] ?? Number.NaN;
    if (!Number.isFinite(y)) return;
    if (run.phase !== phase) parts.push([]);
    phase = run.phase;
    parts.at(-1)?.push({ x: run.at, y });
  });
  return parts;
}

/** Where many runs share a pixel, first, lowest, highest and last of so many px are kept instead of those of each. */
const crowded = (parts: readonly (readonly At[])[], columns: number): number =>
  parts.reduce((sum, part) => sum + part.length, 0) > MOST_LINKED_MARKS ? columns : 1;

function thinned(points: readonly At[], columns: number): At[] {
  return thinSeries(points.map((p) => ({ x: p.x / columns, y: p.y }))).map((p) => ({ x: p.x * columns, y: p.y }));
}

/** A line through each part, thinned to what shows. */
export function runningLine(parts: readonly (readonly At[])[], className = "line"): RenderFunction {
  const columns = crowded(parts, 4);
  return layer(className, ({ x, y, pen }) =>
    parts.map((part) =>
      pen.element("path", {
        d: pathThrough(
          thinned(
            part.map((p) => ({ x: x(p.x), y: y(p.y) })),
            columns,
          ),
        ),
      }),
    ),
  );
}

/** A band from minus to plus the reach of each part, with its limits: for limits that change with time. */
export function runningBand(parts: readonly (readonly At[])[]): readonly RenderFunction[] {
  const columns = crowded(parts, 12);
  const edge = (side: 1 | -1, part: readonly At[], x: (at: number) => number, y: (at: number) => number): At[] =>
    thinned(
      part.map((p) => ({ x: x(p.x), y: y(side * p.y) })),
      columns,
    );
  return [
    layer("band", ({ x, y, pen }) =>
      parts.map((part) => {
        const around = [...edge(1, part, x, y), ...edge(-1, part, x, y).reverse()];
        return pen.element("path", { d: `${pathThrough(around)}z` });
      }),
    ),
    layer("limit", ({ x, y, pen }) =>
      parts.map((part) =>
        pen.element("path", { d: pathThrough(edge(1, part, x, y)) + pathThrough(edge(-1, part, x, y)) }),
      ),
    ),
  ];
}
