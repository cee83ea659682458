import type { BackTest } from "../../report/varietiesResult.ts";
import { printNumber } from "../../units/print.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { halfWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { labelLayer } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { valueTicks } from "../ticks.ts";

/** Which of the two numbers is tested, for the figure's name. */
export interface Reliability {
  readonly id: string;
  readonly title: string;
}

/**
 * What past scores said against what then came, in groups of like forecasts with Wilson's intervals. On the slanting line a
 * forecast is kept: of a hundred batches of which 70 in 100 was said, 70 met every tolerance.
 */
export function reliabilityFigure({ groups, forecasts }: BackTest, design: Reliability): FigureSpec | null {
  if (groups.length === 0) return null;
  const points = groups.map(({ said, seen, forecasts: count }) => ({
    x: 100 * said,
    y: 100 * seen.estimate,
    low: 100 * seen.low,
    high: 100 * seen.high,
    count,
  }));

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const ticks = valueTicks(0, 100, 5);
    const marginTop = Math.round(size * 1.9);
    const marginBottom = footHeight(ticks, size, true);
    const marginLeft = valueAxisWidth(ticks, size);
    const inner = Math.min(frame.width - marginLeft - 16, 330);
    return {
      height: inner + marginTop + marginBottom,
      marginTop,
      marginRight: 16,
      marginBottom,
      marginLeft,
      x: { domain: [0, 100] },
      y: { domain: [0, 100] },
      marks: [
        valueAxis(ticks, "in 100 came", size),
        footAxis(ticks, size, { title: "in 100 foretold" }),
        layer("limit", ({ x, y, pen }) => [pen.element("path", { d: `M${x(0)},${y(0)}L${x(100)},${y(100)}` })]),
        layer("rule", ({ x, y, pen }) => [
          pen.element("path", {
            "stroke-width": 1.6,
            d: points.map((p) => `M${x(p.x)},${y(p.low)}V${y(p.high)}`).join(""),
          }),
        ]),
        layer("dots mark-ink", ({ x, y, pen }) =>
          points.map((p) => pen.element("circle", { cx: x(p.x), cy: y(p.y), r: 4 })),
        ),
        labelLayer({
          size,
          labels: points.map((p) => ({
            ...p,
            reach: 5,
            role: "soft",
            prefer: 0,
            farthest: 30,
            lines: [{ text: printNumber(p.count, 0) }],
          })),
          marks: points.map((p) => ({ ...p, radius: 5, hard: true })),
          lines: points.map((p) => [
            { x: p.x, y: p.low },
            { x: p.x, y: p.high },
          ]),
        }),
      ],
    };
  };

  return {
    ...design,
    summary: `${countOf(forecasts, "forecast")} in ${countOf(points.length, "group")}: ${points
      .map(
        (p) =>
          `${printNumber(p.x, 0)} foretold, ${printNumber(p.y, 0)} came (${printNumber(p.low, 0)} to ${printNumber(p.high, 0)})`,
      )
      .join("; ")}, in 100. On the dashed line forecasts are kept; numbers beside the dots: forecasts.`,
    table: {
      columns: [
        { label: "foretold", unit: "in 100", numeric: true },
        { label: "came", unit: "in 100", numeric: true },
        { label: "low", numeric: true },
        { label: "high", numeric: true },
        { label: "forecasts", numeric: true },
      ],
      rows: points.map((p) => [p.x, p.y, p.low, p.high, p.count].map((value) => printNumber(value, 0))),
    },
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}
