import { dot, type Markish, type PlotOptions } from "@observablehq/plot";
import type { Interval } from "../analysis/regressionFit.ts";
import { fullWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { layer } from "./layer.ts";
import { dotRadius, ringRadius } from "./scatter.ts";
import { textWidth } from "./textWidth.ts";
import { paddedSpan } from "./ticks.ts";

/** One measure on the drawing: former batches' values, this one's, and the spread to expect of the next. */
export interface FormerStrip {
  readonly name: string;
  readonly value: number | null;
  readonly former: readonly number[];
  readonly next: Interval | null;
  /** A value in words, with its unit; in both systems' where they differ. */
  readonly say: (value: number) => string;
  /** Limits of the spec that hold, for a tick at each. */
  readonly limits: readonly number[];
}

export interface FormerWords {
  readonly summary: string;
  readonly rows: FigureSpec["table"]["rows"];
}

const ROW = 64;

/** Each strip on its own scale from 0 to 1, its extremes said at its ends: they share no unit. */
function scaled(strip: FormerStrip) {
  const all = [...strip.former, ...(strip.value === null ? [] : [strip.value])];
  const ends = strip.next === null ? all : [...all, strip.next.low, strip.next.high];
  const spread = Math.max(...ends) - Math.min(...ends);
  const [low, high] = paddedSpan(ends, 0.06, spread > 0 ? spread : 1);
  return { low, high, at: (value: number): number => (value - low) / (high - low) };
}

/** Centres of one text, or of two in a row, as near to where they belong as the frame and each other's widths allow. */
function sideBySide(
  wanted: readonly number[],
  wides: readonly number[],
  { left, right }: { readonly left: number; readonly right: number },
): readonly number[] {
  const [first = 0, second = 0] = wides;
  const within = (centre: number, wide: number, from: number, to: number): number =>
    Math.max(from + wide / 2, Math.min(centre, to - wide / 2));
  const [one = left, two] = wanted;
  if (two === undefined) return [within(one, first, left, right)];
  const apart = (first + second) / 2 + 8;
  // Where both crowd one place they move apart evenly.
  const half = Math.max(0, apart - (two - one)) / 2;
  const low = within(one - half, first, left, right - second - 8);
  return [low, within(Math.max(two + half, low + apart), second, left, right)];
}

/**
 * A batch among the same buyer's former ones, a strip a measure: former batches as dots, this one ringed, and the spread
 * to expect of the next as a band.
 *
 * @returns null where there is nothing to compare
 */
export function formerBatchesFigure(strips: readonly FormerStrip[], { summary, rows }: FormerWords): FigureSpec | null {
  if (strips.length === 0) return null;
  const options = (frame: Frame): PlotOptions => {
    const size = textSize(frame);
    const drawn = strips.map((strip, row) => ({ strip, row, ...scaled(strip) }));
    const marks: Markish[] = [
      layer("strips", ({ x, inside, pen }) =>
        drawn.flatMap(({ strip, row, at }) => {
          const top = row * ROW;
          const line = top + 34;
          const ends = strip.next ?? { low: Math.min(...strip.former), high: Math.max(...strip.former) };
          const [from, to] = [x(at(ends.low)), x(at(ends.high))];
          const texts = [...new Set([strip.say(ends.low), strip.say(ends.high)])];
          const wides = texts.map((text) => textWidth(text, size));
          const centres = sideBySide([from, to].slice(0, texts.length), wides, inside);
          return [
            pen.element("text", { x: 0, y: top + size, "text-anchor": "start", class: "strong" }, [strip.name]),
            ...(strip.next === null
              ? []
              : [pen.element("rect", { class: "band", x: from, y: line - 10, width: to - from, height: 20 })]),
            pen.element("path", { class: "foot", d: `M${inside.left},${line}H${inside.right}` }),
            ...strip.limits
              .map(at)
              .filter((limit) => limit >= 0 && limit <= 1)
              .map((limit) => pen.element("path", { class: "limit", d: `M${x(limit)},${line - 12}v24` })),
            ...texts.map((text, end) =>
              pen.element(
                "text",
                {
                  x: centres[end] ?? from,
                  y: line + 12 + size * 0.85,
                  "text-anchor": "middle",
                  class: "label soft",
                },
                [text],
              ),
            ),
          ];
        }),
      ),
      dot(
        drawn.flatMap(({ strip, row, at }) => strip.former.map((value) => ({ x: at(value), y: row * ROW + 34 }))),
        { x: "x", y: "y", r: dotRadius(frame), className: "dots mark-ink", fill: "currentColor" },
      ),
      dot(
        drawn.flatMap(({ strip, row, at }) =>
          strip.value === null ? [] : [{ x: at(strip.value), y: row * ROW + 34 }],
        ),
        { x: "x", y: "y", r: ringRadius(frame), className: "signal", fill: "none", stroke: "currentColor" },
      ),
      layer("labels", ({ x, width, pen }) =>
        drawn.flatMap(({ strip, row, at }) => {
          if (strip.value === null) return [];
          const text = `this batch ${strip.say(strip.value)}`;
          const half = textWidth(text, size, 600) / 2;
          const beside = textWidth(strip.name, size, 600) + 14 + half;
          const centre = Math.min(Math.max(x(at(strip.value)), beside), width - half);
          return [
            pen.element("text", { class: "label strong", x: centre, y: row * ROW + size, "text-anchor": "middle" }, [
              text,
            ]),
          ];
        }),
      ),
    ];
    return {
      height: strips.length * ROW + 4,
      marginTop: 0,
      marginRight: 12,
      marginBottom: 4,
      marginLeft: 12,
      x: { domain: [0, 1] },
      y: { domain: [0, strips.length * ROW], range: [0, strips.length * ROW] },
      marks,
    };
  };
  return {
    id: "former",
    title: "Among your former batches of this variety",
    summary,
    table: {
      columns: [
        { label: "measure", numeric: false },
        { label: "this batch", numeric: true },
        { label: "former batches", numeric: true },
        { label: "their mean", numeric: true },
        { label: "lowest to highest", numeric: true },
        { label: "next, 9 in 10", numeric: true },
      ],
      rows,
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
