import type { RenderFunction } from "@observablehq/plot";
import { lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { spreadLabels } from "../placeLabels.ts";

/** A name at the right end of a line, one or two rows. */
export interface EndLabel {
  readonly y: number;
  readonly rows: readonly string[];
  readonly role: "ink" | "soft" | "kiln";
}

/** Names of level lines in the right margin, each at its line's height as near as the others let it. */
export function endLabels(labels: readonly EndLabel[], size: number): RenderFunction {
  return layer("ends", ({ y, inside, pen }) => {
    const pitch = lineHeight(size);
    const most = Math.max(...labels.map((label) => label.rows.length), 1);
    const tops = spreadLabels(
      labels.map((label) => y(label.y) - (label.rows.length * pitch) / 2),
      pitch * most,
      0,
      inside.bottom,
    );
    return labels.flatMap(({ rows, role }, i) =>
      rows.map((text, row) =>
        pen.element(
          "text",
          {
            class: `label ${role}`,
            x: inside.right + 6,
            y: (tops[i] ?? 0) + row * pitch + size * 0.97,
            "text-anchor": "start",
          },
          [text],
        ),
      ),
    );
  });
}
