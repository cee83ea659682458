import type { ScaledLimits } from "../analysis/consistency/consistency.ts";
import type { Interval } from "../analysis/regressionFit.ts";

/** What a batch is accepted by: one line of targets.csv or of the house's own tolerances; a side without a limit is null. */
export interface Tolerance {
  /** Name as targets.csv has it: `final_moisture_pct`, `kiln_hours_over_expected`, any column of lab.csv. */
  readonly measure: string;
  readonly low: number | null;
  readonly target: number | null;
  readonly high: number | null;
}

/** One batch as the scores see it. */
export interface ScoredBatch {
  readonly run: string;
  readonly variety: string;
  readonly lot: string | null;
  /** Unloaded, milliseconds UTC. */
  readonly at: number;
  /** In the order of the variety's `measures`, in the measure's own unit; null where not recorded. */
  readonly values: readonly (number | null)[];
  /** Every tolerance met; null where a measure that counts was not recorded. */
  readonly metAll: boolean | null;
}

/** One measure of one variety, with what it alone does to the score. */
export interface MeasureScore {
  readonly tolerance: Tolerance;
  /** What it is judged on, by its nature: shares near an end on log odds, amounts with a long tail on a logarithm. */
  readonly scale: "as it is" | "logarithm" | "log odds";
  /** Its limits on that scale: where the forecasts go on from. */
  readonly limits: ScaledLimits;
  readonly batches: number;
  readonly mean: number;
  /** The variety's own standard deviation; null below two batches. */
  readonly ownSpread: number | null;
  /** The spread that the prediction used: shrunk to the pooled one while batches are few, never under the meter's step / √12. */
  readonly spread: number;
  readonly resolutionFloorUsed: boolean;
  /** Chance that the next batch's value lies inside, 0 to 1, and about the variety's own centre. */
  readonly onTarget: number;
  readonly even: number;
  /** Points in 100 by which *on target* would rise if this measure were always met. */
  readonly drag: number;
  /** How many met it, with Wilson's interval of the share. */
  readonly met: number;
  readonly metShare: Interval;
}

/** `none`: below 5 batches, no score. `early`: below 12, no interval. `full`: with an interval by bootstrap over lots. */
export type ScoreStanding = "none" | "early" | "full";

export interface VarietyScore {
  readonly variety: string;
  readonly grain: string | null;
  /** Batches with every measure that counts. */
  readonly batches: number;
  /** All its batches in the view. */
  readonly allBatches: number;
  readonly lots: number;
  readonly standing: ScoreStanding;
  /** In 100: the chance that the next batch meets every tolerance. Interval (95 %) where `full`, else low = high = null. */
  readonly onTarget: ScoreNumber | null;
  /** The same chance about the variety's own centre. */
  readonly even: ScoreNumber | null;
  readonly met: number;
  readonly metShare: Interval | null;
  /** In order of drag: the one that costs the score most first. */
  readonly measures: readonly MeasureScore[];
  /** Measures that fewer than half of the batches have, such as laboratory results: their own chances stand beside the score. */
  readonly beside: readonly MeasureScore[];
  /** Measures that have a tolerance but too few values of this variety to count, and why. */
  readonly notCounted: readonly { readonly measure: string; readonly reason: string }[];
  readonly batchesInOrder: readonly ScoredBatch[];
  /** Why a `full` score has no interval all the same: too few lots to draw from; null where it has one or none is due. */
  readonly noInterval: string | null;
  readonly tooLittle: string | null;
}

export interface ScoreNumber {
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** How well past scores foretold the very event that they speak of. */
export interface BackTest {
  /** Forecasts made from the past only, one a batch. */
  readonly forecasts: number;
  /** Mean squared difference of forecast and outcome (0 is perfect), and the same for always saying the base rate so far. */
  readonly brierScore: number;
  readonly brierOfBaseRate: number;
  /** Score less base rate, with the interval of the paired difference; below 0 is better. */
  readonly difference: Interval;
  /** Forecasts in groups: what was said, what came, with Wilson's interval. Shares 0 to 1. */
  readonly groups: readonly { readonly said: number; readonly seen: Interval; readonly forecasts: number }[];
}

/** One grain lot of one variety, for one measure. */
export interface LotSpread {
  readonly lot: string;
  readonly batches: number;
  readonly mean: number;
  /** 95 % interval of the lot's mean. */
  readonly meanInterval: Interval;
  readonly spread: number | null;
  readonly firstAt: number;
  readonly lastAt: number;
  /** The lot's mean differs from that of all the variety's other lots (Holm-corrected). */
  readonly differs: boolean;
  readonly differsP: number | null;
  /** The lot spreads more than the others (its own finding). */
  readonly uneven: boolean;
  readonly unevenP: number | null;
}

/** Where one measure's spread comes from, from 5 lots on. */
export interface SpreadSplit {
  readonly measure: string;
  /** In the order in which they were first worked; levels, intervals and spreads as they were measured. */
  readonly lots: readonly LotSpread[];
  /** The house's season was taken out before lots were compared and the spread was split: logs span a year. */
  readonly seasonTakenOut: boolean;
  /** One-way random effects over lots, unbalanced; standard deviations in the measure's unit. Null with `tooLittle`. */
  readonly betweenLots: Interval | null;
  readonly withinLots: Interval | null;
  /** Share of the variance that lies between lots, 0 to 1. */
  readonly shareBetween: Interval | null;
  /** Brown–Forsythe over lots. */
  readonly spreadsDifferP: number | null;
  readonly tooLittle: string | null;
}

/** What differs between a variety's best and worst quarter of batches; corrected for looking at many columns. */
export interface QuarterDifference {
  readonly column: string;
  readonly best: number;
  readonly worst: number;
  readonly difference: Interval;
  readonly p: number;
  /** Benjamini–Hochberg over the columns looked at. */
  readonly correctedP: number;
}

/** Why a variety is uneven, as far as the logs tell. */
export interface VarietyReason {
  /** `lot`: one lot stands out. `grain`: protein, moisture, crop year, grower or germinative energy changed with it.
   *  `process`: an event, the thermostat or the season goes with it. */
  readonly kind: "lot" | "grain" | "process";
  readonly measure: string;
  readonly lot: string | null;
  /** Another level, or uneven in itself. */
  readonly how: "level" | "spread";
  /** Sized in the measure's unit. */
  readonly size: Interval | null;
  /** What of grain or process goes with it: column name or event text. */
  readonly goesWith: string | null;
}

export interface VarietyDetail {
  readonly variety: string;
  readonly splits: readonly SpreadSplit[];
  readonly quarters: {
    readonly each: number;
    readonly lookedAt: number;
    readonly differences: readonly QuarterDifference[];
  } | null;
  readonly reasons: readonly VarietyReason[];
  /** The score once the lot that stands out is left out; null where none does. */
  readonly withoutLot: { readonly lot: string; readonly onTarget: number; readonly batches: number } | null;
  readonly lab: readonly LabRow[];
}

/** A laboratory result; blanks are *not tested*. Column names are those of lab.csv, in SI. */
export interface LabRow {
  readonly run: string;
  readonly testedOn: number;
  readonly laboratory: string | null;
  readonly methodSet: string | null;
  readonly values: Readonly<Record<string, number | null>>;
}

/** This quarter of a year against the last, for one variety and measure. */
export interface PeriodComparison {
  readonly variety: string;
  readonly measure: string;
  readonly now: { readonly name: string; readonly batches: number; readonly mean: number; readonly spread: number };
  readonly before: { readonly name: string; readonly batches: number; readonly mean: number; readonly spread: number };
  /** Now less before, Welch 95 %. */
  readonly difference: Interval;
  /** Ratio of standard deviations now to before, F 95 %. */
  readonly spreadRatio: Interval;
}

export interface VarietiesResult {
  /** Lowest *on target* first among those with a score; those without last. */
  readonly scores: readonly VarietyScore[];
  readonly details: readonly VarietyDetail[];
  /** Of *on target*; and of *even*: the next batch lay within as much room about the variety's centre so far. */
  readonly backTest: BackTest | null;
  readonly backTestOfEven: BackTest | null;
  /** False while intervals and back-tests are still to come: they take longer than all scores together. */
  readonly followed: boolean;
  readonly periods: readonly PeriodComparison[];
  /** Tolerances that were asked for, so that the page can say where they come from. */
  readonly tolerancesFrom: readonly ("targets.csv" | "house.toml")[];
  readonly tooLittle: string | null;
}
