import type { RenderFunction } from "@observablehq/plot";
import { lineHeight } from "./labelLayer.ts";
import { layer } from "./layer.ts";
import { spreadLabels } from "./placeLabels.ts";

/** A kiln's curve as it is drawn: unbroken parts of it, with the class that gives it its colour. */
export interface NamedCurve {
  readonly name: string;
  readonly role: string;
  readonly parts: readonly (readonly { readonly x: number; readonly y: number }[])[];
}

/** The name of each curve at its right end, moved apart where the ends lie close. @param size of the text, px */
export function curveNames(curves: readonly NamedCurve[], size: number): RenderFunction {
  return layer("labels", ({ y: up, inside, pen }) => {
    const ends = curves.flatMap(({ name, role, parts }) => {
      const last = parts.at(-1)?.at(-1);
      return last ? [{ name, role, at: up(last.y) }] : [];
    });
    const spread = spreadLabels(
      ends.map(({ at }) => at),
      lineHeight(size),
      inside.top,
      inside.bottom,
    );
    return ends.map(({ name, role }, i) =>
      pen.element(
        "text",
        {
          class: `label strong${role.startsWith("kiln") ? " kiln" : ""}`,
          x: inside.right + 7,
          y: (spread[i] ?? 0) + size * 0.34,
          "text-anchor": "start",
        },
        [name],
      ),
    );
  });
}
