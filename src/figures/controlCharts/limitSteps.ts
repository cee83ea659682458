import type { RenderFunction } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { layer } from "../layer.ts";

/** Limits at one distance from the centre over one phase, as the rules used them. */
export interface LimitStep {
  readonly phase: number;
  readonly from: number;
  readonly to: number;
  /** Distance from the centre, in the measure's unit. */
  readonly reach: number;
  /** Whose limits they are; empty where the phase has one pair for all. */
  readonly varieties: readonly string[];
}

/** More pairs of lines than this in one phase cannot be told apart: only the narrowest and the widest are drawn. */
const MOST_PAIRS = 3;

/** How many sigma from the centre the limits of a phase lie. */
export function multiplierOf(chart: ControlChart, phase: number): number | null {
  const known = chart.phases[phase]?.centres.find(({ sigma }) => sigma.estimate > 0);
  return known ? known.reach / known.sigma.estimate : null;
}

/**
 * The limits of each phase from its first batch to the first of the next, the last up to `end`. Varieties with a spread
 * of their own have a pair each, narrowest first.
 */
export function limitSteps(chart: ControlChart, end: number): readonly LimitStep[] {
  return chart.phases.flatMap((_, index) => {
    const runs = chart.runs.filter((run) => run.phase === index);
    const multiplier = multiplierOf(chart, index);
    const first = runs[0];
    if (multiplier === null || !first) return [];
    const bySigma = new Map<number, Set<string>>();
    for (const { sigma, variety } of runs) {
      if (sigma === null) continue;
      bySigma.set(sigma, (bySigma.get(sigma) ?? new Set()).add(variety));
    }
    const from = first.at;
    const to = chart.runs.find((run) => run.phase > index)?.at ?? end;
    const pairs = [...bySigma]
      .sort(([a], [b]) => a - b)
      .map(([sigma, held]) => ({ phase: index, from, to, reach: sigma * multiplier, varieties: [...held] }));
    if (pairs.length === 1) return pairs.map((pair) => ({ ...pair, varieties: [] }));
    return pairs.length > MOST_PAIRS ? [pairs[0], pairs.at(-1)].flatMap((pair) => pair ?? []) : pairs;
  });
}

/** A faint band between the narrowest limits of each phase, inside which no batch is beyond its limits, and the lines. */
export function limitMarks(steps: readonly LimitStep[]): readonly RenderFunction[] {
  const narrowest = steps.filter((step, i) => steps.findIndex((other) => other.phase === step.phase) === i);
  return [
    layer("band", ({ x, y, pen }) =>
      narrowest.map(({ from, to, reach }) =>
        pen.element("rect", {
          x: x(from),
          y: y(reach),
          width: Math.max(0, x(to) - x(from)),
          height: y(-reach) - y(reach),
        }),
      ),
    ),
    layer("limit", ({ x, y, pen }) => [
      pen.element("path", {
        d: steps
          .flatMap(({ from, to, reach }) => [reach, -reach].map((at) => `M${x(from)},${y(at)}H${x(to)}`))
          .join(""),
      }),
    ]),
  ];
}
