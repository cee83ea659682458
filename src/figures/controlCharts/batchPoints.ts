import type { ChartedRun } from "../../report/controlChartResult.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { BatchPoint } from "./batchMarks.ts";
import { batchHint } from "./chartWords.ts";

/**
 * One point a batch, at its date of unloading.
 *
 * @param heightOf where it stands; null where it is not drawn
 * @param said what its hint says beyond run, date and variety
 */
export function batchPoints(
  runs: readonly ChartedRun[],
  settings: FigureSettings,
  heightOf: (run: ChartedRun, index: number) => number | null,
  said: (run: ChartedRun, index: number) => string,
): BatchPoint[] {
  return runs.flatMap((run, index): BatchPoint[] => {
    const y = heightOf(run, index);
    if (y === null) return [];
    return [
      {
        x: run.at,
        y,
        hollow: run.leftOut !== null,
        href: settings.runHref(run.run),
        hint: () => batchHint(run, settings, said(run, index)),
      },
    ];
  });
}
