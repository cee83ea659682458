import type { AcrospireCounts } from "../../malting/acrospire.ts";

/** One tank of one batch, as steeping.csv has it; grain moisture is the tank's, else its lot's. */
export interface TankRow {
  readonly run: string;
  readonly tank: string | null;
  readonly grainInKilograms: number | null;
  readonly grainMoisturePercent: number | null;
  readonly startedAt: number;
  readonly endedAt: number | null;
  readonly steepOutKilograms: number | null;
  readonly measuredPercent: number | null;
}

/** One bed of one batch, with the kernels counted as it was unloaded; null where none were. */
export interface BedRow {
  readonly run: string;
  readonly bed: string | null;
  readonly startedAt: number;
  readonly endedAt: number | null;
  readonly meanCelsius: number | null;
  readonly counts: AcrospireCounts | null;
}

/** Kernels counted on the way; `bed` is null where the log names none. */
export interface CountRow {
  readonly run: string;
  readonly bed: string | null;
  readonly countedAt: number;
  readonly counts: AcrospireCounts;
}

/** Tanks, beds and counts of all batches: what steep and germination need beside the joined rows. */
export interface FloorRows {
  readonly tanks: readonly TankRow[];
  readonly beds: readonly BedRow[];
  readonly counts: readonly CountRow[];
}
