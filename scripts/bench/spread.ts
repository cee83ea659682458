import { median } from "../../src/analysis/summary.ts";

/** A measure taken several times. */
export interface Spread {
  readonly median: number;
  readonly min: number;
  readonly max: number;
  readonly times: number;
}

/** @throws RangeError without a single value, or for one that is not a finite number */
export function spreadOf(values: readonly number[]): Spread {
  const odd = values.find((value) => !Number.isFinite(value));
  if (odd !== undefined) throw new RangeError(`spreadOf takes finite numbers; got ${odd}`);
  return { median: median(values), min: Math.min(...values), max: Math.max(...values), times: values.length };
}

/** A measure's line in a table: its name and unit, median, least, most, and how often it was taken. */
export function spreadCells(name: string, unit: string, values: readonly number[], decimals: number): string[] {
  const { median: middle, min, max, times } = spreadOf(values);
  return [name, unit, ...[middle, min, max].map((value) => value.toFixed(decimals)), String(times)];
}

/** Headings for lines of {@link spreadCells}. */
export const SPREAD_HEADINGS = ["", "unit", "median", "min", "max", "times"] as const;
