import type { Tolerance } from "../../report/varietiesResult.ts";
import { printDate } from "../../units/instant.ts";
import { type MaltMeasure, maltMeasure, measureWithUnit, printMeasure } from "../../units/maltMeasure.ts";
import { toShown } from "../../units/quantity.ts";
import type { FigureSettings } from "../figureSettings.ts";

/** One measure of one variety's batches in order, with what is accepted of it. In the units kept inside. */
export interface MeasuredBatches {
  readonly measure: string;
  readonly tolerance: Pick<Tolerance, "low" | "target" | "high">;
  /** By time. */
  readonly batches: readonly { readonly run: string; readonly at: number; readonly value: number }[];
}

/** A batch on its strip, in the reader's unit. */
export interface StripBatch {
  readonly run: string;
  readonly at: number;
  readonly shown: number;
  readonly outside: boolean;
  readonly hint: () => string;
}

export interface BatchStrip {
  readonly measure: MaltMeasure;
  /** `final moisture, %`. */
  readonly name: string;
  readonly low: number | null;
  readonly target: number | null;
  readonly high: number | null;
  readonly batches: readonly StripBatch[];
}

/** Does the value lie beyond what is accepted? A limit itself is accepted. */
export const isOutside = (value: number, { low, high }: Pick<Tolerance, "low" | "high">): boolean =>
  (low !== null && value < low) || (high !== null && value > high);

/** In the reader's units; measures without a value fall out. */
export function batchStrips(
  measured: readonly MeasuredBatches[],
  { units, timeZone }: FigureSettings,
): readonly BatchStrip[] {
  return measured
    .filter(({ batches }) => batches.length > 0)
    .map(({ measure: name, tolerance, batches }) => {
      const measure = maltMeasure(name);
      const shown = (value: number): number => toShown(value, measure.quantity, units);
      const limit = (value: number | null): number | null => (value === null ? null : shown(value));
      return {
        measure,
        name: measureWithUnit(measure, units),
        low: limit(tolerance.low),
        target: limit(tolerance.target),
        high: limit(tolerance.high),
        batches: batches.map(({ run, at, value }) => ({
          run,
          at,
          shown: shown(value),
          outside: isOutside(value, tolerance),
          hint: () => `${run}, ${printDate(at, timeZone)}: ${measure.words} ${printMeasure(measure, value, units)}`,
        })),
      };
    });
}
