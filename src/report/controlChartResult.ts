import type { MovingRangeChart } from "../analysis/controlCharts/movingRangeChart.ts";
import type { SpreadPoint } from "../analysis/controlCharts/sChart.ts";
import type { RuleName, Signal } from "../analysis/controlCharts/signal.ts";
import type { Interval } from "../analysis/regressionFit.ts";
import type { Skewness } from "../analysis/skewness.ts";

/** The two measures that are charted, in per cent; the names are those of targets.csv. */
export type ChartedMeasure = "dry_yield_pct" | "final_moisture_pct";

/** One batch on a chart, in the order of unloading. */
export interface ChartedRun {
  readonly run: string;
  readonly variety: string;
  readonly lot: string | null;
  readonly kiln: string | null;
  readonly load: string | null;
  /** Unloaded, or the best that is known; milliseconds UTC. */
  readonly at: number;
  /** In the measure's unit. For a measure sampled several times a batch, the mean of the samples. */
  readonly value: number;
  readonly samples: number;
  /** Index into `phases`. */
  readonly phase: number;
  readonly inBaseline: boolean;
  /** Why it is on the chart but in no baseline though its turn: `scale event of 12 Sep 2024`, `left out by hand`. */
  readonly leftOut: string | null;
  /** The centre of its variety in its phase; null before any baseline. */
  readonly centre: number | null;
  /** What the rules looked at: value less centre, or what a first-order dependence leaves of it. */
  readonly deviation: number | null;
  readonly sigma: number | null;
}

/** A stretch of runs judged by one set of limits. */
export interface ChartPhase {
  /** `since the first batch`, `since the bed was laid shallower`. */
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly runs: number;
  readonly baselineRuns: number;
  /** Fewer than 12 baseline runs: the limits are provisional, and the page says how uncertain. */
  readonly provisional: boolean;
  /** Spread of single values, pooled within varieties unless `ownSpread`; null before there is one. */
  readonly sigma: Interval | null;
  readonly pooled: boolean;
  readonly centres: readonly {
    readonly variety: string;
    readonly centre: Interval;
    readonly sigma: Interval;
    readonly reach: number;
    readonly baselineRuns: number;
    /** The baseline is full or was named: later batches move nothing. */
    readonly frozen: boolean;
  }[];
  /** Distance of the limits from the centre, in the measure's unit, with its interval. */
  readonly reach: Interval | null;
}

/** A signal in terms of runs and days, with what was logged about them. */
export interface ChartSignal {
  readonly rule: RuleName;
  readonly direction: Signal["direction"];
  /** Signed, in the measure's unit. */
  readonly size: number;
  readonly runs: readonly string[];
  readonly raisedAt: string;
  readonly from: number;
  readonly to: number;
  /** Logged about those days: events, a change of grain lot, another kiln; in words. */
  readonly beside: readonly string[];
}

/** What a set of rules costs on a quiet process. */
export interface FalseSignals {
  readonly rules: readonly RuleName[];
  /** Mean number of runs between false signals if the limits were known exactly. */
  readonly knownLimits: number;
  /** The range over what the baseline leaves uncertain (5 to 95 in 100 baselines of that size). */
  readonly low: number;
  readonly high: number;
  /** How many to expect in the runs judged, by known limits and over the range. */
  readonly expected: Interval;
}

export interface Capability {
  readonly variety: string;
  readonly runs: number;
  readonly low: number | null;
  readonly target: number | null;
  readonly high: number | null;
  /** Bissell's interval. Null where the spread is 0. */
  readonly cpk: Interval | null;
  /** Predicted share of batches outside, per cent, and the share seen with Wilson's interval. */
  readonly expectedOutsidePercent: Interval;
  readonly seenOutside: number;
  readonly seenOutsidePercent: Interval;
}

export interface ControlChart {
  readonly measure: ChartedMeasure;
  readonly runs: readonly ChartedRun[];
  /** Batches that lack the measure, and why in words with counts. */
  readonly lacking: readonly { readonly reason: string; readonly count: number }[];
  readonly phases: readonly ChartPhase[];
  readonly rules: readonly RuleName[];
  readonly signals: readonly ChartSignal[];
  /** Null where there are no limits; `to come` until `findFalseSignals` has worked it out. */
  readonly falseSignals: FalseSignals | "to come" | null;
  /** Running weighted mean of the deviations, in the measure's unit, one a run; null where there are no limits. */
  readonly weightedMean: { readonly means: Float64Array; readonly reach: Float64Array; readonly weight: number } | null;
  readonly cumulativeSums: {
    readonly upper: Float64Array;
    readonly lower: Float64Array;
    readonly decision: number;
  } | null;
  readonly movingRanges: MovingRangeChart | null;
  /** Where batches have two samples or more: the spread within each. */
  readonly within: {
    readonly sigma: number;
    readonly baselineRuns: number;
    readonly points: readonly SpreadPoint[];
    readonly unevenRuns: readonly string[];
    readonly narrowerBy: number | null;
  } | null;
  readonly assumptions: {
    readonly lagOne: Interval;
    /** The chart runs on what a first-order dependence leaves, because the lag-1 interval excludes 0. */
    readonly onResiduals: boolean;
    /** Of the baseline's deviations; null below eight of them. */
    readonly skewness: Skewness | null;
    /** Ordered deviations over sigma against what a normal process would give. */
    readonly normalPlot: readonly { readonly expected: number; readonly seen: number }[];
    /** Steps that the values come in, where the meter is coarse against the spread; null where it is fine enough. */
    readonly coarseStep: number | null;
    readonly distinctValues: number;
  } | null;
  readonly capability: readonly Capability[];
  /** A sentence, where the logs do not carry a chart. */
  readonly tooLittle: string | null;
}

/** What moisture off target costs, by the mass balance, a year of the house's own batches. */
export interface MoistureCost {
  readonly batches: number;
  readonly years: number;
  readonly targetPercent: number;
  /** Malt that could have been sold had every batch below target ended on it, kg a year. */
  readonly driedAwayKilogramsPerYear: number;
  /** Batches above the highest moisture accepted, and their malt, kg a year. */
  readonly refusedBatches: number;
  readonly refusedKilogramsPerYear: number;
  /** Energy to dry off what was dried below target, kWh a year, at the house's median per kg of water; null where unknown. */
  readonly energyKilowattHoursPerYear: number | null;
}

/** Medians over the batches that logged what each needs, per cent of grain dry matter unless said otherwise. */
export interface VarietyBalance {
  readonly variety: string;
  readonly batches: number;
  readonly asIsYieldPercent: number | null;
  readonly dryMatterYieldPercent: number | null;
  readonly lossPercent: number | null;
  readonly rootletsPercent: number | null;
  /** Steep and respiration together, by difference; may be below 0 where a mass is off, and is then shown as it is. */
  readonly steepAndRespirationPercent: number | null;
  readonly negative: number;
  readonly basis: string;
}

export interface YieldMoistureResult {
  readonly charts: readonly ControlChart[];
  readonly moistureCost: MoistureCost | null;
  readonly balance: readonly VarietyBalance[];
}
