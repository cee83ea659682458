import type { RenderFunction } from "@observablehq/plot";
import type { ChartedRun, ControlChart } from "../../report/controlChartResult.ts";
import { layer } from "../layer.ts";
import { pathThrough } from "../thinSeries.ts";
import { multiplierOf } from "./limitSteps.ts";

/** What a batch of one variety was expected to come to, per cent, and how far off its limits lie. */
export interface Expected {
  readonly at: number;
  readonly centre: number;
  readonly reach: number;
}

/** One variety's centre and limits over one phase, at its two ends, or at every batch where they follow the one before. */
export interface ExpectedStretch {
  readonly variety: string;
  readonly phase: number;
  readonly points: readonly Expected[];
}

/** @param end how far the latest phase's limits are drawn */
export function expectedStretches(chart: ControlChart, end: number): readonly ExpectedStretch[] {
  const varieties = [...new Set(chart.runs.map((run) => run.variety))];
  return chart.phases.flatMap((_, phase) => {
    const multiplier = multiplierOf(chart, phase);
    const follows = followsBatchBefore(chart, phase);
    const inPhase = chart.runs.filter((run) => run.phase === phase);
    const from = inPhase[0]?.at;
    if (multiplier === null || from === undefined) return [];
    const to = chart.runs.find((run) => run.phase > phase)?.at ?? end;
    return varieties.flatMap((variety): ExpectedStretch[] => {
      const points = inPhase.filter((run) => run.variety === variety).flatMap((run) => expectedOf(run, multiplier));
      const [first] = points;
      if (!first) return [];
      return [{ variety, phase, points: follows ? points : [from, to].map((at) => ({ ...first, at })) }];
    });
  });
}

/** Two sums of the same numbers differ by rounding alone below this, per cent. */
const ROUNDING = 1e-9;

/** True where the phase is judged on what the batch before let expect, not on the centre itself. */
export function followsBatchBefore({ runs }: ControlChart, phase: number): boolean {
  return runs.some(
    ({ phase: own, value, centre, deviation }) =>
      own === phase && centre !== null && deviation !== null && Math.abs(value - deviation - centre) > ROUNDING,
  );
}

function expectedOf({ at, value, deviation, sigma }: ChartedRun, multiplier: number): Expected[] {
  return deviation === null || sigma === null ? [] : [{ at, centre: value - deviation, reach: multiplier * sigma }];
}

export const highOf = ({ centre, reach }: Expected): number => centre + reach;
export const lowOf = ({ centre, reach }: Expected): number => centre - reach;

/**
 * Band, limits and centre of every stretch.
 *
 * @param shiftOf what is added to a variety's values to place its strip
 */
export function expectedMarks(
  stretches: readonly ExpectedStretch[],
  shiftOf: (variety: string) => number,
): readonly RenderFunction[] {
  const drawn = (
    className: string,
    pathOf: (line: (of: (p: Expected) => number) => string) => string,
  ): RenderFunction =>
    layer(className, ({ x, y, pen }) =>
      stretches.map(({ variety, points }) => {
        const line = (of: (p: Expected) => number): string =>
          pathThrough(points.map((p) => ({ x: x(p.at), y: y(of(p) + shiftOf(variety)) })));
        return pen.element("path", { d: pathOf(line) });
      }),
    );
  return [
    layer("band", ({ x, y, pen }) =>
      stretches.map(({ variety, points }) => {
        const corner = (p: Expected, of: (p: Expected) => number) => ({ x: x(p.at), y: y(of(p) + shiftOf(variety)) });
        const around = [...points.map((p) => corner(p, highOf)), ...[...points].reverse().map((p) => corner(p, lowOf))];
        return pen.element("path", { d: `${pathThrough(around)}z` });
      }),
    ),
    drawn("limit", (line) => line(highOf) + line(lowOf)),
    drawn("rule centre", (line) => line(({ centre }) => centre)),
  ];
}
