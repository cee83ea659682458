import type { RenderFunction } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { textWidth } from "../textWidth.ts";

/** One phase's baseline: its first and last batch, and what it is called, the fullest wording first. */
export interface Bracket {
  readonly from: number;
  readonly to: number;
  readonly wordings: readonly string[];
}

/** Height of the strip at the foot of the frame that the brackets stand in. */
export const bracketStrip = (size: number): number => lineHeight(size) + 16;

export function baselineBrackets(chart: ControlChart): readonly Bracket[] {
  return chart.phases.flatMap((phase, index): Bracket[] => {
    const held = chart.runs.filter((run) => run.phase === index && run.inBaseline);
    const [first, last] = [held[0], held.at(-1)];
    if (!first || !last) return [];
    const count = countOf(held.length, "batch");
    const wordings = phase.provisional
      ? [`provisional baseline, ${count}`, `provisional, ${held.length}`, "provisional"]
      : [`baseline, ${count}`, `baseline, ${held.length}`, "baseline"];
    return [{ from: first.at, to: last.at, wordings: [...wordings, `${held.length}`] }];
  });
}

/** A quiet bracket under the batches that set the limits, named by the fullest wording that fits before the next. */
export function bracketMarks(brackets: readonly Bracket[], size: number): RenderFunction {
  return layer("brackets", ({ x, inside, pen }) => {
    const top = inside.bottom - bracketStrip(size) + 8;
    let taken = inside.left;
    return brackets.flatMap(({ from, to, wordings }, i) => {
      const [left, right] = [x(from) - 3, x(to) + 3];
      const next = brackets[i + 1];
      const limit = next ? x(next.from) - 10 : inside.right;
      const start = Math.max(left, taken);
      const text = wordings.find((words) => start + textWidth(words, size) <= limit);
      const drawn = [pen.element("path", { class: "tick", d: `M${left},${top - 5}V${top}H${right}V${top - 5}` })];
      if (text === undefined) return drawn;
      const wide = textWidth(text, size);
      // Under the middle of its bracket where there is room on both sides.
      const at = Math.min(Math.max((left + right - wide) / 2, start), limit - wide);
      taken = at + wide + 10;
      drawn.push(
        pen.element("text", { class: "label soft", x: at, y: top + size * 1.15, "text-anchor": "start" }, [text]),
      );
      return drawn;
    });
  });
}
