import type { MeasureScore, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import { fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer, type Pen } from "../layer.ts";
import { fitText, textWidth } from "../textWidth.ts";
import { intervalMark, wordsAt } from "./intervalMark.ts";
import { onPaper, type Panel, panelGrid } from "./panelGrid.ts";

/** A measure met more surely than this drags no score: such are counted, not drawn. */
const SURE = 0.95;
const TICKS = [0, 50, 100] as const;
const BAR = 5;

/** What is drawn of a variety: its dragging measures, or the one that drags most where none does much. */
const drawnOf = ({ measures }: VarietyScore): readonly MeasureScore[] => {
  const dragging = measures.filter(({ onTarget }) => onTarget < SURE);
  return dragging.length > 0 ? dragging : measures.slice(0, 1);
};

const nameOf = (one: MeasureScore): string => maltMeasure(one.tolerance.measure).words;

/** A chance in 100 that is not rounded to a certainty. */
function inHundred(chance: number): string {
  if (chance > 0 && chance < 0.005) return "< 1";
  return chance < 1 && chance >= 0.995 ? "> 99" : printNumber(100 * chance, 0);
}

/**
 * Each measure's own chance of being met, one small drawing a variety on one scale, the measure that costs most first. The
 * bar reaches from certainty down to the chance, so the longer it is, the more the measure drags.
 *
 * @returns null where no variety has a measure with a chance
 */
export function chancesFigure(scores: readonly VarietyScore[]): FigureSpec | null {
  const drawn = scores.filter(({ standing, measures }) => standing !== "none" && measures.length > 0);
  if (drawn.length === 0) return null;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const line = lineHeight(size) + 2;
    const columns = frame.narrow ? 1 : drawn.length === 1 ? 1 : 2;
    const foot = line + 10;
    const heightOf = (score: VarietyScore): number =>
      line * (drawnOf(score).length + (othersOf(score) > 0 ? 2 : 1)) + foot + 12;
    const { panels, height } = panelGrid(drawn.map(heightOf), { width: frame.width, columns, gap: 44 });
    const names = Math.max(...drawn.flatMap((score) => drawnOf(score).map((one) => textWidth(nameOf(one), size))));
    const left = Math.min(Math.ceil(names) + 14, frame.narrow ? 165 : 220);
    return onPaper(frame.width, height, [
      layer("chances", ({ pen }) =>
        drawn.flatMap((score, i) => {
          const panel = panels[i];
          return panel === undefined ? [] : panelOf(score, panel, { left, size, line, pen });
        }),
      ),
    ]);
  };

  return {
    id: "measure-chances",
    title: "What each measure alone does to the score",
    summary: `${drawn.map(said).join(" ")} The bar is what a measure costs: from 100 down to the chance that it alone is met.`,
    table: {
      columns: [
        { label: "variety", numeric: false },
        { label: "measure", numeric: false },
        { label: "chance alone", unit: "in 100", numeric: true },
        { label: "about its own centre", unit: "in 100", numeric: true },
        { label: "met", numeric: true },
        { label: "of", numeric: true },
      ],
      rows: drawn.flatMap(({ variety, measures }) =>
        measures.map((one) => [
          variety,
          nameOf(one),
          inHundred(one.onTarget),
          inHundred(one.even),
          printNumber(one.met, 0),
          printNumber(one.batches, 0),
        ]),
      ),
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

const othersOf = (score: VarietyScore): number => score.measures.length - drawnOf(score).length;

interface Drawing {
  readonly left: number;
  readonly size: number;
  readonly line: number;
  readonly pen: Pen;
}

function panelOf(score: VarietyScore, panel: Panel, { left, size, line, pen }: Drawing): readonly SVGElement[] {
  const rows = drawnOf(score);
  const [from, to] = [panel.left + left, panel.left + panel.width - 34];
  const x = (chance: number): number => from + (to - from) * chance;
  const top = panel.top + line;
  const bottom = top + rows.length * line;
  const others = othersOf(score);
  return [
    wordsAt(pen, score.standing === "early" ? `${score.variety}, early` : score.variety, {
      x: panel.left,
      y: panel.top + size,
      role: "name strong",
    }),
    pen.element("path", { class: "grid", d: TICKS.map((at) => `M${x(at / 100)},${top}V${bottom}`).join("") }),
    ...rows.flatMap((one, i) => {
      const y = top + (i + 0.5) * line;
      return [
        wordsAt(pen, fitText(nameOf(one), left - 10, size), { x: panel.left, y: y + size * 0.34, role: "label ink" }),
        pen.element("g", { class: "shares" }, [
          pen.element("path", { "stroke-width": BAR, d: `M${x(one.onTarget)},${y}H${x(1)}` }),
        ]),
        ...intervalMark(
          { at: x(one.onTarget), y, low: null, high: null, form: "dot", open: score.standing === "early" },
          pen,
        ),
        wordsAt(pen, inHundred(one.onTarget), {
          x: panel.left + panel.width,
          y: y + size * 0.34,
          role: "label ink",
          anchor: "end",
        }),
      ];
    }),
    ...(others === 0
      ? []
      : [
          wordsAt(
            pen,
            `${others} ${others === 1 ? "other" : "others"}, each met by ${printNumber(SURE * 100, 0)} in 100 or more`,
            {
              x: panel.left,
              y: bottom + line * 0.5 + size * 0.34,
              role: "label soft",
            },
          ),
        ]),
    ...TICKS.map((at) =>
      wordsAt(pen, String(at), {
        x: x(at / 100),
        y: bottom + (others === 0 ? 0 : line) + size + 3,
        role: "label soft",
        anchor: "middle",
      }),
    ),
  ];
}

/** `Alva: final moisture 62, colour 81.` */
function said(score: VarietyScore): string {
  const rows = drawnOf(score)
    .slice(0, 3)
    .map((one) => `${nameOf(one)} ${inHundred(one.onTarget)}`);
  return `${score.variety}: ${rows.join(", ")} in 100.`;
}
