import { denseDots } from "../scatter.ts";
import { paddedSpan, type Tick, valueTicks } from "../ticks.ts";
import type { Panel } from "../varieties/panelGrid.ts";
import type { MeasuredBatch, MonthSpan } from "./monthMeasures.ts";

/** How all panels of a drawing are laid out, px. */
export interface PanelDesign {
  readonly size: number;
  /** Height of the field itself. */
  readonly field: number;
  /** Room for values on the left, and for the month's mean on the right. */
  readonly left: number;
  readonly right: number;
}

const NAME = 2;
const DATES = 1.9;

/** A name above the field, dates below it, and clear paper to the next. */
export const panelHeight = ({ size, field }: PanelDesign): number => Math.round(field + (NAME + DATES) * size + 10);

/** Where a moment and a value stand, px from the drawing's corner. */
export interface PanelScale {
  readonly x: (at: number) => number;
  readonly y: (value: number) => number;
  readonly ticks: readonly Tick[];
  readonly top: number;
  readonly bottom: number;
  readonly from: number;
  readonly to: number;
}

/** The scale of one measure's panel: every batch and every limit is seen. @param batches in the reader's unit */
export function panelScale(
  batches: readonly MeasuredBatch[],
  span: MonthSpan,
  panel: Panel,
  { size, field, left, right }: PanelDesign,
): PanelScale {
  const values = batches.flatMap(({ value, low, high }) => [value, ...[low, high].filter((end) => end !== null)]);
  const [low, high] = paddedSpan(values, 0.08, 1e-3);
  const top = panel.top + NAME * size;
  const bottom = top + field;
  const [from, to] = [panel.left + left, panel.left + panel.width - right];
  return {
    x: (at) => from + ((at - span.from) / (span.to - span.from)) * (to - from),
    y: (value) => bottom - ((value - low) / (high - low)) * field,
    ticks: valueTicks(low, high, 3),
    top,
    bottom,
    from,
    to,
  };
}

/** Where each batch's own limit stands: a line that steps where the next batch's variety has another. */
export function limitSteps(
  batches: readonly MeasuredBatch[],
  { x, y, from, to }: PanelScale,
  side: "low" | "high",
): string {
  let path = "";
  let before: number | null = null;
  batches.forEach((batch, i) => {
    const [last, next] = [batches[i - 1], batches[i + 1]];
    const limit = batch[side];
    if (limit !== null) {
      const start = last === undefined ? from : (x(last.at) + x(batch.at)) / 2;
      const end = next === undefined ? to : (x(next.at) + x(batch.at)) / 2;
      if (before !== limit) path += `M${start.toFixed(1)},${y(limit).toFixed(1)}`;
      path += `H${end.toFixed(1)}`;
    }
    before = limit;
  });
  return path;
}

/** Batches as one path of dots. */
export const dotsOf = (batches: readonly MeasuredBatch[], { x, y }: PanelScale): string =>
  denseDots(batches.map(({ at, value }) => ({ x: x(at), y: y(value) })));
