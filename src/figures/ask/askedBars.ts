import type { PlotOptions } from "@observablehq/plot";
import { footAxis, footHeight } from "../axes.ts";
import { textSize } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";
import { fitText, textWidth } from "../textWidth.ts";
import { valueTicks } from "../ticks.ts";

export interface AskedBar {
  readonly name: string;
  readonly value: number;
  readonly said: string;
}

const widest = (texts: readonly string[], size: number): number =>
  Math.ceil(Math.max(...texts.map((text) => textWidth(text, size))));

/** Bars from nought, in the order of the answer; on a phone a bar's name stands above it. */
export function askedBars(bars: readonly AskedBar[], title: string, frame: Frame): PlotOptions {
  const size = textSize(frame);
  const high = Math.max(0, ...bars.map(({ value }) => value));
  const low = Math.min(0, ...bars.map(({ value }) => value));
  const domain: readonly [number, number] = high > low ? [low, high] : [0, 1];
  const ticks = valueTicks(domain[0], domain[1], frame.narrow ? 3 : 6);
  const height = Math.round(size * 1.15);
  const head = frame.narrow ? Math.round(size * 1.3) : 0;
  const step = head + height + 6;
  const names = bars.map(({ name }) => name);
  const left = frame.narrow ? 0 : Math.min(260, widest(names, size) + 12);
  const marginBottom = footHeight(ticks, size, true);
  return {
    height: bars.length * step + marginBottom,
    marginTop: 0,
    marginLeft: left,
    marginRight:
      widest(
        bars.map(({ said }) => said),
        size,
      ) + 8,
    marginBottom,
    x: { domain: [...domain] },
    marks: [
      layer("grid", ({ x, inside, pen }) => [
        pen.element("path", {
          class: "grid",
          d: ticks.map(({ at }) => `M${x(at)},${inside.top}V${inside.bottom}`).join(""),
        }),
      ]),
      footAxis(ticks, size, { title }),
      layer("bars", ({ x, pen }) =>
        bars.flatMap(({ name, value, said }, row) => {
          const top = row * step + head;
          const [from, to] = [x(Math.min(0, value)), x(Math.max(0, value))];
          const middle = top + height / 2 + size * 0.34;
          const nameAt = frame.narrow ? { x: 0, y: top - size * 0.25 } : { x: left - 8, y: middle };
          return [
            pen.element("rect", { class: "mark-ink", x: from, y: top, width: Math.max(to - from, 1), height }),
            pen.element("text", { ...nameAt, "text-anchor": frame.narrow ? "start" : "end" }, [
              fitText(name, frame.narrow ? frame.width : left - 8, size),
            ]),
            pen.element("text", { x: to + 6, y: middle, "text-anchor": "start" }, [said]),
          ];
        }),
      ),
    ],
  };
}
