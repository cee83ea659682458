import type { RenderFunction } from "@observablehq/plot";
import { printDate } from "../../units/instant.ts";
import type { FigureSettings } from "../figureSettings.ts";
import { layer } from "../layer.ts";
import type { ThermostatFrame } from "./thermostatFrame.ts";

/** Where earlier loads are left out, from when the drawing runs. */
export function beganWords({ cut, x, size }: ThermostatFrame, { timeZone }: FigureSettings): readonly RenderFunction[] {
  if (!cut) return [];
  return [
    layer("began", ({ width, pen }) => [
      pen.element("text", { class: "label soft", x: width, y: size, "text-anchor": "end" }, [
        `from ${printDate(x[0], timeZone)}`,
      ]),
    ]),
  ];
}
