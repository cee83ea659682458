import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import type { ControlChart } from "../../report/controlChartResult.ts";
import type { Report } from "../../report/report.ts";

/** The figures of one measure; what the logs cannot carry is null. This file alone declares the page's figures. */
export interface MeasureFigures {
  readonly chart: FigureSpec | null;
  readonly weightedMean: FigureSpec | null;
  readonly within: FigureSpec | null;
  readonly movingRanges: FigureSpec | null;
  readonly cumulativeSums: FigureSpec | null;
  readonly normalPlot: FigureSpec | null;
}

export interface YieldMoistureFigures {
  /** One a chart, in the report's order. */
  readonly measures: readonly MeasureFigures[];
  readonly capability: FigureSpec | null;
  readonly balance: FigureSpec | null;
}

export function yieldMoistureFigures(report: Report, _settings: FigureSettings, _apart: boolean): YieldMoistureFigures {
  const none = (_: ControlChart): MeasureFigures => ({
    chart: null,
    weightedMean: null,
    within: null,
    movingRanges: null,
    cumulativeSums: null,
    normalPlot: null,
  });
  return { measures: report.yieldMoisture.charts.map(none), capability: null, balance: null };
}
