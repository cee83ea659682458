import type { Markish, PlotOptions } from "@observablehq/plot";
import { footHeight } from "../axes.ts";
import { type ChartFrame, chartFrame, type DatedRuns } from "../controlCharts/chartFrame.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { textWidth } from "../textWidth.ts";
import { stripScale } from "../thermostat/ownStrips.ts";

/** A chart's time axis with room on the right for names of its own at the ends of lines. */
export function floorFrame(
  dated: DatedRuns,
  settings: FigureSettings,
  frame: Frame,
  names: readonly string[],
): ChartFrame {
  const shared = chartFrame(dated, settings, frame);
  const { x, left, size } = shared;
  const right = Math.ceil(Math.max(...names.map((name) => textWidth(name, size)), 0)) + 8;
  return {
    ...shared,
    right,
    acrossAt: (at) => left + ((at - x[0]) / (x[1] - x[0])) * (frame.width - left - right),
  };
}

/** The names of strips as lines that labels keep off, on a y scale of px from the top of the frame. */
export function nameLines(
  strips: readonly { readonly name: string; readonly nameAt: number }[],
  { x, left, size, acrossAt }: ChartFrame,
): readonly (readonly { readonly x: number; readonly y: number }[])[] {
  const perPixel = (x[1] - x[0]) / (acrossAt(x[1]) - left);
  return strips.flatMap(({ name, nameAt }) => {
    const end = x[0] + Math.max(0, textWidth(name, size, 600) - left) * perPixel;
    return [nameAt, nameAt - size * 0.7].map((y) => [
      { x: x[0], y },
      { x: end, y },
    ]);
  });
}

/** Strips of `inner` px under each other on the frame's time axis. */
export function stripOptions(
  { x, left, right, months, size }: ChartFrame,
  inner: number,
  marks: Markish[],
): PlotOptions {
  const marginBottom = footHeight(months, size);
  return {
    height: inner + 4 + marginBottom,
    marginTop: 4,
    marginRight: right,
    marginBottom,
    marginLeft: left,
    x: { domain: x },
    y: { domain: stripScale(inner) },
    marks,
  };
}

/** One chart of `height` px on the frame's time axis. */
export function chartOptions(
  { x, left, right, months, size }: ChartFrame,
  { height, y, marks }: { readonly height: number; readonly y: readonly [number, number]; readonly marks: Markish[] },
): PlotOptions {
  return {
    height,
    marginTop: Math.round(size * 1.9),
    marginRight: right,
    marginBottom: footHeight(months, size),
    marginLeft: left,
    x: { domain: x },
    y: { domain: y },
    marks,
  };
}
