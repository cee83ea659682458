import type { Interval } from "../analysis/regressionFit.ts";
import type { EventRow } from "./eventRow.ts";

/** What a change can have touched, by its scope. Names are those of targets.csv, or `kiln_hours` and `energy_kwh`. */
export type ChangedMeasure =
  | "kiln_hours"
  | "final_moisture_pct"
  | "dry_yield_pct"
  | "energy_kwh"
  | "steep_out_moisture_pct"
  | "acrospire_mean";

export type ChangeVerdict = "helped" | "hurt" | "moved" | "no difference" | "cannot be told";

/** One run or load of a comparison: its value, and that less what the model explains. */
export interface ChangePoint {
  readonly run: string;
  readonly at: number;
  readonly value: number;
  readonly adjusted: number;
  readonly isAfter: boolean;
}

/** What the next few runs less the last few come to at dates without a change, and at the change's own date. */
export interface Placebo {
  readonly dates: number;
  /** Dates that show as much as the change's own does. */
  readonly asLarge: number;
  /** Signed, largest first. */
  readonly sizes: readonly number[];
  /** How many runs a side each difference is made of. */
  readonly runsEachSide: number;
  /** The same at the change's own date: between fewer runs than its total effect, and so less sure. */
  readonly own: number;
}

export interface ChangeEffect {
  readonly measure: ChangedMeasure;
  /** Levels on both sides at the weather and the varieties of the whole comparison. */
  readonly before: Interval;
  readonly after: Interval;
  readonly runsBefore: number;
  readonly runsAfter: number;
  /** After less before, adjusted for weather and variety but never for what the change altered; in the measure's unit. */
  readonly total: Interval;
  /** The same without any adjustment: the plain difference of two means, by Welch. */
  readonly plain: Interval;
  /** What is left of it beside the altered column; null where the change names none, or it did not vary otherwise. */
  readonly beyond: Interval | null;
  /** Null where no stretch of runs without an event is long enough to try any. */
  readonly placebo: Placebo | null;
  readonly verdict: ChangeVerdict;
  /** A difference that its interval tells, but that other dates show as well. */
  readonly doubtedByPlacebo: boolean;
  /** Largest difference that the interval leaves; what *no difference bigger than X* says. */
  readonly noBiggerThan: number;
  /** A difference that is worth telling. */
  readonly tellable: number;
  /** For *cannot be told yet*: how many more runs after the change would tell `tellable`; null where none will come or do. */
  readonly moreRuns: number | null;
  /**
   * Where `moreRuns` cannot be said since weather or varieties differ too much between the sides as yet: what it takes once they
   * do not. Null elsewhere.
   */
  readonly moreRunsAtLeast: number | null;
  /** Why both are null, where more runs would be wanted. */
  readonly whyNoMore: "comparison is closed" | "too few before" | null;
  /** What it is adjusted for, in words: `air needed`, `bed depth`, `variety`. */
  readonly adjustedFor: readonly string[];
  /** Of the values beside what the model explains. */
  readonly spread: number;
  /** Neighbouring values are alike, and the interval was widened for it. */
  readonly isSerial: boolean;
  /** What the house aims at, of these runs' varieties; null where none is named. */
  readonly aim: number | null;
  /** In time order. */
  readonly points: readonly ChangePoint[];
}

export interface ChangeResult {
  readonly event: EventRow;
  /** What sentences call the altered column: `bed depth`; null where the change names none. */
  readonly altered: string | null;
  /** Stable in an address: date and a count. */
  readonly id: string;
  /** The moment from which it holds: the beginning of its local day. */
  readonly at: number;
  /** What the comparison spans: from the event of the same scope before to the one after, at most a year each way. */
  readonly from: number;
  readonly to: number;
  /** What the change can have touched first. Measures that could not be compared are in `lacking`. */
  readonly effects: readonly ChangeEffect[];
  readonly lacking: readonly { readonly measure: ChangedMeasure; readonly reason: string }[];
  readonly warnings: readonly ChangeWarning[];
  /** What else was logged within the comparison that could move the same measures, incidents too. */
  readonly beside: readonly EventRow[];
  /** Why nothing at all was compared. */
  readonly tooLittle: string | null;
}

export interface ChangeWarning {
  readonly kind: "another event" | "season" | "few runs" | "other variety" | "load size";
  /** A whole sentence. */
  readonly what: string;
}

/** Runs needed on each side for a wanted difference at the house's own spread, power 0.8 and 0.9, 5 % two-sided. */
export interface TrialPlan {
  readonly measure: ChangedMeasure;
  readonly spread: number;
  /** Runs that the spread was taken from. */
  readonly runs: number;
  readonly rows: readonly TrialRow[];
}

export interface TrialRow {
  readonly difference: number;
  /** Null: more than any house could make. */
  readonly runsEachSide80: number | null;
  readonly runsEachSide90: number | null;
}

export interface ChangesResult {
  /** Latest first. */
  readonly changes: readonly ChangeResult[];
  readonly plans: readonly TrialPlan[];
  readonly tooLittle: string | null;
}
