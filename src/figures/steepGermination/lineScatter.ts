import { areaY, line, type Markish, type PlotOptions } from "@observablehq/plot";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { textSize } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { dotRadius, ringRadius, rings, type ScatterPoint, scatter } from "../scatter.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";

/** A fitted line with the 95 % band of its mean, in shown units. */
export interface BandedLine {
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number; readonly low: number; readonly high: number }[];
}

export interface LineScatter {
  readonly stage: "steep" | "germination";
  readonly points: readonly ScatterPoint[];
  readonly lines: readonly BandedLine[];
  readonly xTitle: string;
  readonly yTitle: string;
  /** Points unlike the rest, ringed and named. */
  readonly ringed?: readonly { readonly x: number; readonly y: number; readonly name: string }[];
  /** Named where it stands on the y axis, with a dashed line across. */
  readonly aim?: { readonly y: number; readonly name: string };
  /** Spans that are drawn at least. */
  readonly leastX: number;
  readonly leastY: number;
}

/** Points of one stage in its hue under fitted lines, each line named at the place where most room is. */
export function lineScatter({ stage, points, lines, xTitle, yTitle, aim, ringed = [], leastX, leastY }: LineScatter) {
  return (frame: Frame): PlotOptions => {
    const size = textSize(frame);
    const fitted = lines.flatMap((one) => one.points);
    const x = paddedSpan(
      [...points, ...fitted].map((p) => p.x),
      0.03,
      leastX,
    );
    const y = paddedSpan(
      [...points.map((p) => p.y), ...fitted.flatMap((p) => [p.low, p.high]), ...(aim === undefined ? [] : [aim.y])],
      0.08,
      leastY,
    );
    const down = valueTicks(y[0], y[1], frame.narrow ? 4 : 6);
    const across = valueTicks(x[0], x[1], frame.narrow ? 5 : 7);
    const labels: Label[] = lines.flatMap(({ name, points: own }, i): Label[] => {
      const rising = (own.at(-1)?.y ?? 0) >= (own[0]?.y ?? 0);
      const at = own[Math.floor((own.length - 1) * (rising ? 0.85 : 0.15))];
      if (at === undefined || name === "") return [];
      return [
        {
          x: at.x,
          y: at.y,
          prefer: 270,
          priority: 2 - i / 10,
          farthest: 140,
          role: stage,
          lines: [{ text: name, strong: true }],
        },
      ];
    });
    if (aim !== undefined) {
      labels.push({
        x: x[0] + (x[1] - x[0]) * 0.12,
        y: aim.y,
        prefer: 270,
        priority: 3,
        farthest: 60,
        role: "ink",
        lines: [{ text: aim.name }],
      });
    }
    for (const { x: at, y: height, name } of ringed) {
      labels.push({
        x: at,
        y: height,
        reach: ringRadius(frame),
        priority: 1,
        role: "signal-words",
        lines: [{ text: name, strong: true }],
      });
    }
    const level = aim === undefined ? [] : x.map((at) => ({ x: at, y: aim.y }));
    const marks: Markish[] = [
      valueAxis(down, yTitle, size),
      footAxis(across, size, { title: xTitle }),
      ...lines.map(({ points: own }) =>
        areaY(own, { x: "x", y1: "low", y2: "high", className: `band ${stage}`, fill: "currentColor" }),
      ),
      ...(level.length === 0 ? [] : [line(level, { x: "x", y: "y", className: "limit", stroke: "currentColor" })]),
      scatter(points, frame, `mark-${stage}`),
      ...lines.map(({ points: own }) =>
        line(own, { x: "x", y: "y", className: `line ${stage}`, stroke: "currentColor" }),
      ),
      rings(ringed, frame),
      labelLayer({
        size,
        labels,
        lines: [...lines.map((one) => one.points), ...(level.length === 0 ? [] : [level])],
        marks: points.length > 600 ? [] : points.map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
      }),
    ];
    return {
      height: frame.narrow ? 280 : 340,
      marginTop: Math.round(size * 1.9),
      marginRight: 4,
      marginBottom: footHeight(across, size, true),
      marginLeft: valueAxisWidth(down, size),
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };
}
