import { balanceFigure } from "../../figures/controlCharts/balanceFigure.ts";
import { capabilityFigure } from "../../figures/controlCharts/capabilityFigure.ts";
import { controlChartApart } from "../../figures/controlCharts/controlChartApart.ts";
import { controlChartFigure } from "../../figures/controlCharts/controlChartFigure.ts";
import { cumulativeSumFigure } from "../../figures/controlCharts/cumulativeSumFigure.ts";
import { movingRangeFigure } from "../../figures/controlCharts/movingRangeFigure.ts";
import { normalPlotFigure } from "../../figures/controlCharts/normalPlotFigure.ts";
import { weightedMeanFigure } from "../../figures/controlCharts/weightedMeanFigure.ts";
import { withinSpreadFigure } from "../../figures/controlCharts/withinSpreadFigure.ts";
import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import type { ControlChart } from "../../report/controlChartResult.ts";
import type { ReportRows, ReportWith } from "../../report/report.ts";
import { lazily } from "../lazily.ts";

/** The figures of one measure; what the logs cannot carry is null. This file alone declares the page's figures. */
export interface MeasureFigures {
  readonly chart: FigureSpec | null;
  readonly weightedMean: FigureSpec | null;
  readonly within: FigureSpec | null;
  readonly movingRanges: FigureSpec | null;
  readonly cumulativeSums: FigureSpec | null;
  readonly normalPlot: FigureSpec | null;
  readonly capability: FigureSpec | null;
}

export interface YieldMoistureFigures {
  /** One a chart, in the report's order. */
  readonly measures: readonly MeasureFigures[];
  readonly balance: FigureSpec | null;
}

/** What was logged about the house while the chart runs; a logger moves no batch, and phases are the chart's own. */
function chartEvents(
  report: ReportRows,
  { runs }: ControlChart,
): readonly { readonly on: number; readonly what: string }[] {
  const [first, last] = [runs[0]?.at ?? 0, runs.at(-1)?.at ?? 0];
  return report.events.filter(
    ({ on, kind, scope }) => kind !== "new-baseline" && scope !== "logger" && on >= first && on <= last,
  );
}

/** @param apart each variety in a strip of its own, rather than all together as differences from their centres */
function measureFigures(
  report: ReportRows,
  chart: ControlChart,
  settings: FigureSettings,
  apart: boolean,
): MeasureFigures {
  return lazily<MeasureFigures>({
    chart() {
      const varieties = [...new Set(chart.runs.map(({ variety }) => variety))].sort();
      return apart && varieties.length > 1
        ? controlChartApart(chart, varieties, settings)
        : controlChartFigure(chart, settings, { events: chartEvents(report, chart) });
    },
    weightedMean: () => weightedMeanFigure(chart, settings),
    within: () => withinSpreadFigure(chart, settings),
    movingRanges: () => movingRangeFigure(chart, settings),
    cumulativeSums: () => cumulativeSumFigure(chart, settings),
    normalPlot: () => normalPlotFigure(chart, settings),
    capability: () => capabilityFigure(chart, settings),
  });
}

export function yieldMoistureFigures(
  report: ReportWith<"yieldMoisture">,
  settings: FigureSettings,
  apart: boolean,
): YieldMoistureFigures {
  const { charts, balance } = report.yieldMoisture;
  return lazily<YieldMoistureFigures>({
    measures: () => charts.map((chart) => measureFigures(report, chart, settings, apart)),
    balance: () => balanceFigure(balance, settings),
  });
}
