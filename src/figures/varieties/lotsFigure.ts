import type { LotSpread, SpreadSplit, Tolerance } from "../../report/varietiesResult.ts";
import {
  type MaltMeasure,
  maltMeasure,
  measureWithUnit,
  printMeasureDifference,
  printMeasureMean,
} from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import { toShown } from "../../units/quantity.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer, type Pen } from "../layer.ts";
import { fitText, textWidth } from "../textWidth.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";
import { intervalMark, wordsAt } from "./intervalMark.ts";
import { onPaper, type Panel, panelGrid } from "./panelGrid.ts";

/** One measure's lots with what is accepted of it. */
export interface LotsOfMeasure {
  readonly split: SpreadSplit;
  readonly tolerance: Pick<Tolerance, "low" | "target" | "high">;
}

/** What is wrong with a lot, in a word or two; empty for most. */
export function lotFault({ differs, uneven }: LotSpread): string {
  if (differs && uneven) return "other level, uneven";
  return differs ? "other level" : uneven ? "uneven in itself" : "";
}

/**
 * A variety's grain lots side by side, by date, one small drawing a measure: mean with its 95 % interval as a thick line, the
 * lot's own spread (a standard deviation either way) as a thin one, the accepted band washed. A lot that stands out is ringed
 * and says how.
 *
 * @returns null where no measure has two lots
 */
export function lotsFigure(
  measures: readonly LotsOfMeasure[],
  settings: FigureSettings,
  { id, title }: { readonly id: string; readonly title: string },
): FigureSpec | null {
  const drawn = measures.filter(({ split }) => split.lots.length >= 2);
  if (drawn.length === 0) return null;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const line = lineHeight(size) + 2;
    const columns = frame.narrow ? 1 : Math.min(2, drawn.length);
    const heights = drawn.map(({ split }) => line * (split.lots.length + 2) + 18);
    const { panels, height } = panelGrid(heights, { width: frame.width, columns, gap: 40 });
    const wide = (text: string): number => textWidth(text, size);
    const lots = drawn.flatMap(({ split }) => split.lots);
    const left = Math.min(Math.ceil(Math.max(...lots.map((lot) => wide(lotName(lot))))) + 12, frame.narrow ? 110 : 150);
    const faults = Math.max(...lots.map((lot) => wide(lotFault(lot))));
    const right = faults === 0 ? 12 : Math.ceil(faults) + 10;
    return onPaper(frame.width, height, [
      layer("lots", ({ pen }) =>
        drawn.flatMap((one, i) => {
          const panel = panels[i];
          return panel === undefined ? [] : panelOf(one, panel, { left, right, size, line, pen, settings });
        }),
      ),
    ]);
  };

  const cut = drawn.some((one) => isCut(one, settings)) ? " Lines that reach an edge go on beyond it." : "";
  const out = drawn.flatMap(({ split }) =>
    split.lots.flatMap((lot) => {
      const fault = lotFault(lot);
      return fault === "" ? [] : [`${lot.lot}, ${maltMeasure(split.measure).words}: ${fault}`];
    }),
  );
  return {
    id,
    title,
    summary: `${out.length === 0 ? "No lot stands out by level or by spread." : `${out.join("; ")}.`} Thick line: 95\u00a0% interval of the lot’s mean; thin line: one standard deviation of its batches either way; shaded: what is accepted.${cut}`,
    table: {
      columns: [
        { label: "lot", numeric: false },
        { label: "measure", numeric: false },
        { label: "batches", numeric: true },
        { label: "mean", numeric: true },
        { label: "low", numeric: true },
        { label: "high", numeric: true },
        { label: "own spread", numeric: true },
        { label: "stands out", numeric: false },
      ],
      rows: drawn.flatMap(({ split }) => split.lots.map((lot) => lotRow(lot, maltMeasure(split.measure), settings))),
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

const lotName = ({ lot, batches }: LotSpread): string => `${lot} (${printNumber(batches, 0)})`;

function lotRow(lot: LotSpread, measure: MaltMeasure, settings: FigureSettings): readonly string[] {
  const { units } = settings;
  const spread = (value: number): string => printMeasureDifference(measure, value, units, { bare: true });
  const level = (value: number): string => printMeasureMean(measure, value, units, { bare: true });
  return [
    lot.lot,
    measureWithUnit(measure, settings.units),
    printNumber(lot.batches, 0),
    level(lot.mean),
    ...(lot.batches < 2 ? ["", ""] : [level(lot.meanInterval.low), level(lot.meanInterval.high)]),
    lot.spread === null ? "" : spread(lot.spread),
    lotFault(lot),
  ];
}

const limitsOf = ({ low, high }: LotsOfMeasure["tolerance"]): readonly number[] =>
  [low, high].flatMap((value) => value ?? []);

/** What a measure's drawing spans, in the reader's unit. An interval from two batches may be wider than anything measured. */
function spanOf({ split, tolerance }: LotsOfMeasure, { units }: FigureSettings): readonly [number, number] {
  const { quantity } = maltMeasure(split.measure);
  const shown = (value: number): number => toShown(value, quantity, units);
  const reached = split.lots.flatMap(({ mean, spread }) => [mean - (spread ?? 0), mean + (spread ?? 0)]);
  const inner = paddedSpan(reached.map(shown), 0.3, 1e-6);
  return paddedSpan([...inner, ...limitsOf(tolerance).map(shown)], 0.03, 1e-6);
}

/** Does any interval go on beyond its drawing? */
function isCut(one: LotsOfMeasure, settings: FigureSettings): boolean {
  const [low, high] = spanOf(one, settings);
  const { quantity } = maltMeasure(one.split.measure);
  return one.split.lots.some(
    ({ batches, meanInterval }) =>
      batches > 1 &&
      (toShown(meanInterval.low, quantity, settings.units) < low ||
        toShown(meanInterval.high, quantity, settings.units) > high),
  );
}

interface Drawing {
  readonly left: number;
  readonly right: number;
  readonly size: number;
  readonly line: number;
  readonly pen: Pen;
  readonly settings: FigureSettings;
}

function panelOf(
  one: LotsOfMeasure,
  panel: Panel,
  { left, right, size, line, pen, settings }: Drawing,
): readonly SVGElement[] {
  const { split, tolerance } = one;
  const { lots } = split;
  const measure = maltMeasure(split.measure);
  const shown = (value: number): number => toShown(value, measure.quantity, settings.units);
  const limits = limitsOf(tolerance).map(shown);
  const [low, high] = spanOf(one, settings);
  const [from, to] = [panel.left + left, panel.left + panel.width - right];
  const x = (value: number): number => from + Math.min(Math.max((value - low) / (high - low), 0), 1) * (to - from);
  const top = panel.top + line + 2;
  const bottom = top + lots.length * line;
  const ticks = valueTicks(low, high, 4);
  const [bandFrom, bandTo] = [
    tolerance.low === null ? from : x(shown(tolerance.low)),
    tolerance.high === null ? to : x(shown(tolerance.high)),
  ];
  return [
    wordsAt(pen, fitText(measureWithUnit(measure, settings.units), panel.width, size, 600), {
      x: panel.left,
      y: panel.top + size,
      role: "name strong",
    }),
    ...(limits.length === 0
      ? []
      : [pen.element("rect", { class: "band", x: bandFrom, y: top, width: bandTo - bandFrom, height: bottom - top })]),
    pen.element("path", { class: "grid", d: ticks.map(({ at }) => `M${x(at)},${top}V${bottom}`).join("") }),
    ...(tolerance.target === null
      ? []
      : [pen.element("path", { class: "limit", d: `M${x(shown(tolerance.target))},${top}V${bottom}` })]),
    ...lots.flatMap((lot, i) => {
      const y = top + (i + 0.5) * line;
      const at = x(shown(lot.mean));
      const fault = lotFault(lot);
      const own =
        lot.spread === null
          ? []
          : [
              pen.element("path", {
                class: "rule",
                "stroke-width": 0.8,
                d: `M${x(shown(lot.mean - lot.spread))},${y}H${x(shown(lot.mean + lot.spread))}`,
              }),
            ];
      const interval =
        lot.batches < 2
          ? []
          : [
              pen.element("path", {
                class: "rule",
                "stroke-width": 3,
                d: `M${x(shown(lot.meanInterval.low))},${y}H${x(shown(lot.meanInterval.high))}`,
              }),
            ];
      return [
        wordsAt(pen, fitText(lotName(lot), left - 6, size), { x: panel.left, y: y + size * 0.34, role: "label ink" }),
        ...own,
        ...interval,
        ...intervalMark({ at, y, low: null, high: null, form: "dot", open: lot.batches < 2 }, pen),
        ...(fault === ""
          ? []
          : [
              pen.element("circle", { class: "signal", cx: at, cy: y, r: 7 }),
              wordsAt(pen, fault, { x: to + 8, y: y + size * 0.34, role: "label signal-words strong" }),
            ]),
      ];
    }),
    ...ticks.map(({ at, label }) =>
      wordsAt(pen, label, { x: x(at), y: bottom + size + 3, role: "label soft", anchor: "middle" }),
    ),
  ];
}
