import type { RenderFunction } from "@observablehq/plot";
import type { HoldJudgement } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import type { FigureSettings } from "../figureSettings.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { textWidth } from "../textWidth.ts";
import { printDateSpan } from "./dateSpan.ts";
import type { DegreeWords } from "./degreeWords.ts";

/** When a change began, between its earliest and its latest date. */
export interface OnsetBracket {
  readonly low: number;
  readonly estimate: number;
  readonly high: number;
  /** Level before it, the reader's degrees: the upright of the estimate reaches up to it. */
  readonly level: number;
  readonly wordings: readonly string[];
}

/** Height of the strip that the brackets stand in, px. */
export const onsetStrip = (size: number): number => lineHeight(size) + 16;

export function onsetBrackets(
  { stretches }: HoldJudgement,
  { shown }: DegreeWords,
  [from, to]: readonly [number, number],
  { timeZone }: FigureSettings,
): readonly OnsetBracket[] {
  const date = (moment: number): string => printDate(moment, timeZone);
  return stretches.flatMap(({ models }): OnsetBracket[] => {
    const onset = models?.onset;
    if (!models || !onset || onset.estimate < from || onset.estimate > to) return [];
    const lead = models.winner === "step" ? "stepped" : "began";
    return [
      {
        low: Math.max(onset.low, from),
        estimate: onset.estimate,
        high: Math.min(onset.high, to),
        level: shown(models.levelKelvin.estimate),
        wordings: [
          `${lead} about ${date(onset.estimate)} (${printDateSpan(onset.low, onset.high, timeZone)})`,
          `${lead} about ${date(onset.estimate)}`,
          date(onset.estimate),
        ],
      },
    ];
  });
}

/**
 * A bracket over the dates between which each change began, an upright from its estimate to the line, and the fullest
 * words that fit beside the next.
 *
 * @param lift of the strip's foot over the foot of the frame, px
 */
export function onsetMarks(brackets: readonly OnsetBracket[], size: number, lift: number): RenderFunction {
  return layer("brackets", ({ x, y, inside, pen, width }) => {
    const top = inside.bottom - lift - onsetStrip(size) + 8;
    let taken = inside.left;
    return brackets.flatMap(({ low, estimate, high, level, wordings }, i) => {
      const [left, at, right] = [x(low) - 2, x(estimate), x(high) + 2];
      const next = brackets[i + 1];
      const limit = next ? x(next.low) - 10 : width - 2;
      const drawn = [
        pen.element("path", { class: "tick", d: `M${left},${top - 5}V${top}H${right}V${top - 5}` }),
        pen.element("path", { class: "leader", d: `M${at},${top}V${y(level)}` }),
      ];
      const text = wordings.find((words) => textWidth(words, size) <= limit - taken);
      if (text === undefined) return drawn;
      const wide = textWidth(text, size);
      const start = Math.min(Math.max(at - wide / 2, taken), limit - wide);
      taken = start + wide + 10;
      return [
        ...drawn,
        pen.element("text", { class: "label soft", x: start, y: top + size * 1.15, "text-anchor": "start" }, [text]),
      ];
    });
  });
}
