import type { RenderFunction } from "@observablehq/plot";
import type { MarkAt } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { textWidth } from "../textWidth.ts";
import type { Tick } from "../ticks.ts";
import type { ChartFrame } from "./chartFrame.ts";

/** One of several strips under each other on one axis: its name, and what is added to its values to place it. */
export interface Strip {
  readonly name: string;
  readonly shift: number;
}

/** Height of a strip's name above the highest value of the shared span, px. */
const NAME_UP = 8;

/** The same hairlines and values for each strip, its name at the left above them, the unit above all. */
export function stripAxes(
  strips: readonly Strip[],
  ticks: readonly Tick[],
  { top, unit, size }: { readonly top: number; readonly unit: string; readonly size: number },
): RenderFunction {
  return layer("axis", ({ y, inside, pen }) => [
    pen.element("path", {
      class: "grid",
      d: strips.flatMap(({ shift }) => ticks.map((t) => `M${inside.left},${y(t.at + shift)}H${inside.right}`)).join(""),
    }),
    ...strips.flatMap(({ name, shift }) => [
      ...ticks.map((t) =>
        pen.element("text", { x: inside.left - 8, y: y(t.at + shift) + size * 0.34, "text-anchor": "end" }, [t.label]),
      ),
      pen.element(
        "text",
        { class: "name strong", x: inside.left, y: y(top + shift) - NAME_UP, "text-anchor": "start" },
        [name],
      ),
    ]),
    pen.element("text", { class: "title", x: 0, y: size, "text-anchor": "start" }, [unit]),
  ]);
}

/** The strips' names as marks that labels keep off. */
export function stripNameMarks(
  strips: readonly Strip[],
  { top, perPixel }: { readonly top: number; readonly perPixel: number },
  { x, left, size, acrossAt }: ChartFrame,
): MarkAt[] {
  const perAcross = (x[1] - x[0]) / (acrossAt(x[1]) - acrossAt(x[0]));
  return strips.flatMap(({ name, shift }) => {
    const count = Math.ceil(textWidth(name, size, 600) / size);
    return Array.from({ length: count }, (_, i) => ({
      x: x[0] + (acrossAt(x[0]) - left + (i + 0.5) * size) * perAcross,
      y: top + shift + (NAME_UP + size * 0.35) * perPixel,
      radius: size * 0.6,
      hard: true,
    }));
  });
}
