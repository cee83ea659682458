import type { Markish, PlotOptions } from "@observablehq/plot";
import { dot } from "@observablehq/plot";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { textSize } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";
import { denseDots, dotRadius, MOST_LINKED_MARKS } from "../scatter.ts";
import { paddedSpan, type Tick, valueTicks } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";
import { AS_GIVEN } from "./askedCells.ts";

export interface AskedDot {
  readonly x: number;
  readonly y: number;
}

const DAY = 86_400_000;

function timeTicks([from, to]: readonly [number, number], frame: Frame): readonly Tick[] {
  const count = frame.narrow ? 4 : 11;
  const months = monthTicks(from, to, count, AS_GIVEN);
  return months.length >= 2 ? months : dayTicks(from, to, frame.narrow ? 3 : 8, AS_GIVEN);
}

function dotMarks(dots: readonly AskedDot[], frame: Frame): Markish {
  if (dots.length > MOST_LINKED_MARKS) {
    return layer("dense mark-ink", ({ x, y, pen }) => [
      pen.element("path", { "stroke-width": 4, d: denseDots(dots.map((p) => ({ x: x(p.x), y: y(p.y) }))) }),
    ]);
  }
  return dot(dots, { x: "x", y: "y", r: dotRadius(frame) + 0.5, className: "dots mark-ink", fill: "currentColor" });
}

/** One dot a row; `across` is null where the foot is time. */
export function askedDots(
  dots: readonly AskedDot[],
  names: { readonly across: string | null; readonly up: string },
  frame: Frame,
): PlotOptions {
  const size = textSize(frame);
  const inTime = names.across === null;
  const ys = dots.map((p) => p.y);
  const spread = Math.max(...ys) - Math.min(...ys);
  const x = paddedSpan(
    dots.map((p) => p.x),
    0.02,
    inTime ? 14 * DAY : 1e-6,
  );
  const y = paddedSpan(ys, 0.08, spread > 0 ? spread : Math.max(1, Math.abs(ys[0] ?? 0) * 0.1));
  const upTicks = valueTicks(y[0], y[1], frame.narrow ? 4 : 5);
  const acrossTicks = inTime ? timeTicks(x, frame) : valueTicks(x[0], x[1], frame.narrow ? 4 : 9);
  return {
    height: frame.narrow ? 250 : 300,
    marginTop: Math.round(size * 1.9),
    marginRight: 8,
    marginBottom: footHeight(acrossTicks, size, !inTime),
    marginLeft: valueAxisWidth(upTicks, size),
    x: { domain: [...x] },
    y: { domain: [...y] },
    marks: [
      valueAxis(upTicks, names.up, size),
      footAxis(acrossTicks, size, names.across === null ? {} : { title: names.across }),
      dotMarks(dots, frame),
    ],
  };
}
