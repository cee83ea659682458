import { controlChartFigure } from "../../figures/controlCharts/controlChartFigure.ts";
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

/** What was logged about the house while the chart runs; a logger moves no batch, and phases are the chart's own. */
function chartEvents(
  report: Report,
  { runs }: ControlChart,
): readonly { readonly on: number; readonly what: string }[] {
  const [first, last] = [runs[0]?.at ?? 0, runs.at(-1)?.at ?? 0];
  return report.events.filter(
    ({ on, kind, scope }) => kind !== "new-baseline" && scope !== "logger" && on >= first && on <= last,
  );
}

function measureFigures(report: Report, chart: ControlChart, settings: FigureSettings): MeasureFigures {
  const events = chartEvents(report, chart);
  return {
    chart: controlChartFigure(chart, settings, { events }),
    weightedMean: null,
    within: null,
    movingRanges: null,
    cumulativeSums: null,
    normalPlot: null,
  };
}

export function yieldMoistureFigures(report: Report, settings: FigureSettings, _apart: boolean): YieldMoistureFigures {
  const { charts } = report.yieldMoisture;
  return {
    measures: charts.map((chart) => measureFigures(report, chart, settings)),
    capability: null,
    balance: null,
  };
}
