import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { kilnCurveFigure } from "../../figures/kilnCurveFigure.ts";
import { runTimeline } from "../../figures/runTimeline.ts";
import type { RunPageResult } from "../../report/runPageResult.ts";

/** The figures of a run's page; what was not logged is left out. This file alone declares them. */
export interface RunFigures {
  readonly timeline: FigureSpec | null;
  /** One a load that has readings. */
  readonly curves: readonly FigureSpec[];
}

export function runFigures(result: RunPageResult, settings: FigureSettings): RunFigures {
  const { run, loads, curves } = result;
  const withReadings = loads.flatMap((load) => {
    const curve = curves.get(load.load);
    return curve === undefined ? [] : [{ load, curve }];
  });
  const abreast = withReadings.length > 1;
  return {
    timeline: runTimeline(run, settings),
    curves: withReadings
      .map(({ load, curve }) => kilnCurveFigure(curve, load, settings, abreast))
      .filter((spec) => spec !== null),
  };
}
