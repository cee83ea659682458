import type { RenderFunction } from "@observablehq/plot";
import { layer } from "./layer.ts";
import { textWidth } from "./textWidth.ts";
import type { Tick } from "./ticks.ts";

/** Hairlines across the frame with their values in the left margin, and what they measure above the first. */
export function valueAxis(ticks: readonly Tick[], title: string, size: number): RenderFunction {
  return layer("axis", ({ y, inside, pen }) => [
    pen.element("path", {
      class: "grid",
      // None where it would double the foot of the frame.
      d: ticks
        .filter((t) => inside.bottom - y(t.at) > 4)
        .map((t) => `M${inside.left},${y(t.at)}H${inside.right}`)
        .join(""),
    }),
    ...ticks.map((t) =>
      pen.element("text", { x: inside.left - 8, y: y(t.at) + size * 0.34, "text-anchor": "end" }, [t.label]),
    ),
    pen.element("text", { class: "title", x: 0, y: size, "text-anchor": "start" }, [title]),
  ]);
}

/** Room that {@link valueAxis} needs on the left. */
export function valueAxisWidth(ticks: readonly Tick[], size: number): number {
  return Math.ceil(Math.max(...ticks.map((t) => textWidth(t.label, size)), 0)) + 10;
}

/** Room that {@link footAxis} needs under the frame. */
export function footHeight(ticks: readonly Tick[], size: number, titled = false): number {
  const rows = 1 + (ticks.some((t) => t.under !== undefined) ? 1 : 0) + (titled ? 1 : 0);
  return Math.ceil(9 + rows * size * 1.25);
}

export interface FootAxisOptions {
  readonly title?: string;
  /** `after`: beside the tick, for names of what begins there, such as a day at its midnight. */
  readonly names?: "under" | "after";
}

/** Ticks that hang from a line along the foot of the frame; the title stands flush right under them. */
export function footAxis(
  ticks: readonly Tick[],
  size: number,
  { title, names = "under" }: FootAxisOptions = {},
): RenderFunction {
  return layer("axis", ({ x, inside, pen, width, height }) => {
    const foot = inside.bottom;
    return [
      pen.element("path", { class: "foot", d: `M${inside.left},${foot}H${inside.right}` }),
      pen.element("path", {
        class: "tick",
        d: ticks.map((t) => `M${x(t.at)},${foot}v${names === "after" ? 7 : 5}`).join(""),
      }),
      ...ticks.flatMap((t) => {
        const wide = Math.max(textWidth(t.label, size), textWidth(t.under ?? "", size));
        if (names === "after" && x(t.at) + 5 + wide > width) return [];
        // A label at the very end of the axis is pushed in rather than cut off.
        const at = names === "after" ? x(t.at) + 5 : Math.min(Math.max(x(t.at), wide / 2), width - wide / 2);
        return [t.label, ...(t.under === undefined ? [] : [t.under])].map((text, row) =>
          pen.element(
            "text",
            {
              x: at,
              y: foot + 7 + size * (0.95 + row * 1.2),
              "text-anchor": names === "after" ? "start" : "middle",
              ...(row > 0 ? { class: "under" } : {}),
            },
            [text],
          ),
        );
      }),
      ...(title === undefined
        ? []
        : [
            pen.element("text", { class: "title", x: inside.right, y: height - size * 0.3, "text-anchor": "end" }, [
              title,
            ]),
          ]),
    ];
  });
}
