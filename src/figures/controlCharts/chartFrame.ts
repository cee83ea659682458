import { type FigureSettings, textSize } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { textWidth } from "../textWidth.ts";
import { paddedSpan, type Tick } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";

const DAY = 86_400_000;
/** A shorter time than this is told in days. */
const FEW_DAYS = 70;
/** Narrower than this, px, words at the ends of lines stand in two rows. */
const ROOMY = 640;

/** Batches with their dates. */
export interface DatedRuns {
  readonly runs: readonly { readonly at: number }[];
}

/** What all charts of one measure over time share, so that they stand under each other on one time axis. */
export interface ChartFrame {
  readonly size: number;
  readonly x: readonly [number, number];
  /** First days of months, or days where the chart spans few. */
  readonly months: readonly Tick[];
  readonly left: number;
  readonly right: number;
  /** Where a date stands on the drawing, px. */
  readonly acrossAt: (at: number) => number;
}

export function chartFrame(chart: DatedRuns, { timeZone }: FigureSettings, frame: Frame): ChartFrame {
  const size = textSize(frame);
  const x = paddedSpan(
    chart.runs.map((run) => run.at),
    0.015,
    14 * DAY,
  );
  const left = Math.ceil(textWidth("+0.00", size)) + 10;
  const tight = frame.width < ROOMY;
  const right = Math.ceil(textWidth(tight ? "centre" : "limit +0.000", size)) + 8;
  const days = (x[1] - x[0]) / DAY;
  return {
    size,
    x,
    months:
      days < FEW_DAYS
        ? dayTicks(x[0], x[1], tight ? 3 : 8, timeZone)
        : monthTicks(x[0], x[1], tight ? 4 : 11, timeZone),
    left,
    right,
    acrossAt: (at) => left + ((at - x[0]) / (x[1] - x[0])) * (frame.width - left - right),
  };
}
