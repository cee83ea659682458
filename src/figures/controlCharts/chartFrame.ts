import type { ControlChart } from "../../report/controlChartResult.ts";
import { type FigureSettings, textSize } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { textWidth } from "../textWidth.ts";
import { paddedSpan, type Tick } from "../ticks.ts";
import { monthTicks } from "../timeTicks.ts";

const DAY = 86_400_000;

/** What all charts of one measure over time share, so that they stand under each other on one time axis. */
export interface ChartFrame {
  readonly size: number;
  readonly x: readonly [number, number];
  readonly months: readonly Tick[];
  readonly left: number;
  readonly right: number;
  /** Where a date stands on the drawing, px. */
  readonly acrossAt: (at: number) => number;
}

/** @param sideways the longest text expected in the right margin, beyond those that every such chart has */
export function chartFrame(chart: ControlChart, { timeZone }: FigureSettings, frame: Frame, sideways = ""): ChartFrame {
  const size = textSize(frame);
  const x = paddedSpan(
    chart.runs.map((run) => run.at),
    0.015,
    14 * DAY,
  );
  const left = Math.ceil(textWidth("+0.00", size)) + 10;
  const usual = frame.narrow ? "centre" : "limit +0.00";
  const right = Math.ceil(Math.max(textWidth(usual, size), textWidth(sideways, size))) + 8;
  return {
    size,
    x,
    months: monthTicks(x[0], x[1], frame.narrow ? 4 : 11, timeZone),
    left,
    right,
    acrossAt: (at) => left + ((at - x[0]) / (x[1] - x[0])) * (frame.width - left - right),
  };
}
