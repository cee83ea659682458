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

/** Of what stands beside the score, such as laboratory results of some batches, the same. */
const besideOf = ({ beside }: VarietyScore): readonly MeasureScore[] =>
  beside.filter(({ onTarget }) => onTarget < SURE);

/** One line of a panel: a measure with its bar, or words alone. */
type Line = { readonly one: MeasureScore } | { readonly words: string };

function linesOf(score: VarietyScore): readonly Line[] {
  const others = score.measures.length - drawnOf(score).length;
  const beside = besideOf(score);
  const sure = `each met by ${printNumber(SURE * 100, 0)} in 100 or more`;
  return [
    ...drawnOf(score).map((one) => ({ one })),
    ...(others === 0 ? [] : [{ words: `${printNumber(others, 0)} ${others === 1 ? "other" : "others"}, ${sure}` }]),
    ...(beside.length === 0 ? [] : [{ words: "beside the score, of the batches tested:" }]),
    ...beside.map((one) => ({ one })),
  ];
}

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
    const heightOf = (score: VarietyScore): number => line * (linesOf(score).length + 1) + foot + 12;
    const { panels, height } = panelGrid(drawn.map(heightOf), { width: frame.width, columns, gap: 44 });
    const names = Math.max(
      ...drawn.flatMap((score) => [...drawnOf(score), ...besideOf(score)].map((one) => textWidth(nameOf(one), size))),
    );
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
        { label: "costs the score", unit: "points", numeric: true },
        { label: "met", numeric: true },
        { label: "of", numeric: true },
      ],
      rows: drawn.flatMap(({ variety, measures, beside }) =>
        [...measures, ...beside].map((one) => [
          variety,
          nameOf(one),
          inHundred(one.onTarget),
          inHundred(one.even),
          measures.includes(one) ? printNumber(one.drag, 1) : "beside it",
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

interface Drawing {
  readonly left: number;
  readonly size: number;
  readonly line: number;
  readonly pen: Pen;
}

function panelOf(score: VarietyScore, panel: Panel, { left, size, line, pen }: Drawing): readonly SVGElement[] {
  const lines = linesOf(score);
  const [from, to] = [panel.left + left, panel.left + panel.width - 34];
  const x = (chance: number): number => from + (to - from) * chance;
  const top = panel.top + line;
  const bottom = top + lines.length * line;
  const open = score.standing === "early";
  return [
    wordsAt(pen, open ? `${score.variety}, early` : score.variety, {
      x: panel.left,
      y: panel.top + size,
      role: "name strong",
    }),
    pen.element("path", { class: "grid", d: TICKS.map((at) => `M${x(at / 100)},${top}V${bottom}`).join("") }),
    ...lines.flatMap((row, i) => {
      const y = top + (i + 0.5) * line;
      const baseline = y + size * 0.34;
      if ("words" in row) return [wordsAt(pen, row.words, { x: panel.left, y: baseline, role: "label soft" })];
      const at = x(row.one.onTarget);
      return [
        wordsAt(pen, fitText(nameOf(row.one), left - 10, size), { x: panel.left, y: baseline, role: "label ink" }),
        pen.element("g", { class: "shares" }, [pen.element("path", { "stroke-width": BAR, d: `M${at},${y}H${x(1)}` })]),
        ...intervalMark({ at, y, low: null, high: null, form: "dot", open }, pen),
        wordsAt(pen, inHundred(row.one.onTarget), {
          x: panel.left + panel.width,
          y: baseline,
          role: "label ink",
          anchor: "end",
        }),
      ];
    }),
    ...TICKS.map((at) =>
      wordsAt(pen, String(at), { x: x(at / 100), y: bottom + size + 3, role: "label soft", anchor: "middle" }),
    ),
  ];
}

/** `Alva: final moisture 62, colour 81.` */
function said(score: VarietyScore): string {
  const rows = drawnOf(score)
    .slice(0, 1)
    .map((one) => `${nameOf(one)} ${inHundred(one.onTarget)}`);
  return `${score.variety}: ${rows.join(", ")} in 100.`;
}
