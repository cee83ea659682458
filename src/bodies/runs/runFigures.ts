import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { kilnCurveFigure } from "../../figures/kilnCurveFigure.ts";
import { runTimeline } from "../../figures/runTimeline.ts";
import type { RunPageResult } from "../../report/runPageResult.ts";

/** Every figure of a run's page; what was not logged is left out. Nothing else declares a figure of it. */
export function runFigures(result: RunPageResult, settings: FigureSettings): readonly FigureSpec[] {
  const { run, loads, curves } = result;
  const kiln = loads.map((load) => {
    const curve = curves.get(load.load);
    return curve === undefined ? null : kilnCurveFigure(curve, load, settings);
  });
  return [runTimeline(run, settings), ...kiln].filter((spec) => spec !== null);
}
