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

export interface ChangeEffect {
  readonly measure: ChangedMeasure;
  readonly before: number;
  readonly after: number;
  /** After less before, adjusted for weather and variety but never for what the change altered; in the measure's unit. */
  readonly total: Interval;
  /** What is left of it beside the altered column; null where the change names none, or it did not vary otherwise. */
  readonly beyond: Interval | null;
  /** The same test at other dates, largest size first; the chance that a date without a change shows as much. */
  readonly placebo: { readonly dates: number; readonly asLarge: number; readonly sizes: readonly number[] } | null;
  readonly verdict: "helped" | "hurt" | "moved" | "no difference" | "cannot be told";
  /** For *no difference bigger than X*. */
  readonly noBiggerThan: number | null;
  /** For *cannot be told yet*: how many more runs on the shorter side would tell a difference of `tellable`. */
  readonly moreRuns: number | null;
  readonly tellable: number | null;
  /** Points, one a run or load: value, adjusted for what the model explains. */
  readonly points: readonly {
    readonly run: string;
    readonly at: number;
    readonly value: number;
    readonly adjusted: number;
    readonly isAfter: boolean;
  }[];
}

export interface ChangeResult {
  readonly event: EventRow;
  /** Stable in an address: date and a count. */
  readonly id: string;
  /** Runs each side that the comparison stands on: from the event before to the event after, at most a year each way. */
  readonly from: number;
  readonly to: number;
  readonly effects: readonly ChangeEffect[];
  readonly warnings: readonly ChangeWarning[];
  readonly tooLittle: string | null;
}

export interface ChangeWarning {
  readonly kind: "another event" | "season" | "few runs" | "other variety";
  readonly what: string;
}

/** Runs needed on each side for a wanted difference at the house's own spread, power 0.8 and 0.9, 5 % two-sided. */
export interface TrialPlan {
  readonly measure: ChangedMeasure;
  readonly spread: number;
  readonly rows: readonly {
    readonly difference: number;
    readonly runsEachSide80: number;
    readonly runsEachSide90: number;
  }[];
}

export interface ChangesResult {
  /** Latest first. */
  readonly changes: readonly ChangeResult[];
  readonly plans: readonly TrialPlan[];
  readonly tooLittle: string | null;
}
