import type { Interval } from "../analysis/regressionFit.ts";
import type { AcrospireCounts } from "../malting/acrospire.ts";

/** Steep and floor of one batch, with tanks and beds apart. Null is *not recorded*. */
export interface SteepRun {
  readonly run: string;
  readonly variety: string | null;
  readonly lot: string | null;
  readonly startedAt: number;
  readonly waterCelsius: number | null;
  readonly wetHours: number | null;
  readonly airRestHours: number | null;
  /** Elapsed hours from first wet to steep-out. */
  readonly hours: number | null;
  readonly grainMoisturePercent: number | null;
  readonly measuredPercent: number | null;
  /** 100 − W0 (100 − M0) / W1. */
  readonly fromMassGainPercent: number | null;
  /** The one that the house's other pages use, and which it is. */
  readonly steepOutPercent: number | null;
  readonly basis: "measured" | "from mass gain" | null;
  readonly chittedPercent: number | null;
  readonly target: { readonly low: number | null; readonly target: number | null; readonly high: number | null } | null;
}

/** Measured less mass gain, where both exist: a bias is a finding. */
export interface SteepBias {
  readonly batches: number;
  readonly meanPoints: Interval;
  /** 95 % of single differences lie between these (Bland and Altman's limits of agreement). */
  readonly limits: readonly [number, number];
  /** Whether the interval of the mean keeps clear of 0. */
  readonly clear: boolean;
  /** One for each batch, earliest first. */
  readonly differences: readonly { readonly run: string; readonly points: number }[];
}

/** Steep-out moisture on wet hours and water temperature, within varieties. */
export interface UptakeModel {
  readonly batches: number;
  /** How every moisture in the fit was come by: one way throughout, the one that more batches have. */
  readonly basis: "measured" | "from mass gain";
  readonly pointsPerWetHour: Interval;
  readonly pointsPerKelvin: Interval | null;
  readonly residualPoints: number;
  readonly rSquared: number;
  /** Batches that the fit cannot account for, corrected for looking at all: a scale, a meter or a slip of the pen to look into. */
  readonly unlikeTheRest: readonly string[];
  /** Measured less mass gain, points, allowed for in `hoursToTarget` where the fit is of mass gains and the bias is clear. */
  readonly allowedForBiasPoints: number | null;
  /** For each variety with a target: wet hours that would have met it at the house's usual water, and what it gets now. */
  readonly hoursToTarget: readonly {
    readonly variety: string;
    readonly targetPercent: number;
    readonly usualWetHours: number;
    /** Moisture that the usual hours give on average. */
    readonly usualPercent: number;
    readonly usualWaterCelsius: number | null;
    /** Null where the answer lies outside the hours logged: refused, with `refusal`. */
    readonly wetHours: Interval | null;
    readonly refusal: string | null;
  }[];
  /** For each batch in order: fitted, and what was seen. */
  readonly points: readonly {
    readonly run: string;
    readonly variety: string;
    readonly wetHours: number;
    readonly waterCelsius: number | null;
    readonly percent: number;
    readonly fittedPercent: number;
  }[];
  readonly lines: readonly {
    readonly variety: string;
    readonly atCelsius: number | null;
    readonly line: readonly {
      readonly wetHours: number;
      readonly percent: number;
      readonly low: number;
      readonly high: number;
    }[];
  }[];
}

/** One bed of one batch. */
export interface BedCount {
  readonly bed: string;
  readonly counts: AcrospireCounts | null;
  readonly counted: number;
  readonly meanLength: number | null;
  readonly bedMeanCelsius: number | null;
}

/** Kernels counted at unloading, a batch. Shares in per cent with Wilson's interval. */
export interface AcrospireRun {
  readonly run: string;
  readonly variety: string | null;
  readonly at: number;
  readonly hours: number | null;
  readonly bedMeanCelsius: number | null;
  readonly counts: AcrospireCounts;
  readonly counted: number;
  /** Fraction of kernel length, with its counting error (multinomial). */
  readonly meanLength: Interval;
  /** Share between half and full length: the house's evenness. */
  readonly evenPercent: Interval;
  readonly undergrownPercent: Interval;
  readonly overgrownPercent: Interval;
  readonly beds: readonly BedCount[];
  readonly targets: {
    readonly meanLow: number | null;
    readonly meanTarget: number | null;
    readonly meanHigh: number | null;
    readonly overgrownHigh: number | null;
  } | null;
}

/**
 * A bed that lagged or ran ahead of the others of its batch: a finding that an average would hide. Of two beds it is the
 * shorter that is named, since one comparison says all.
 */
export interface BedLag {
  readonly run: string;
  readonly bed: string;
  readonly at: number;
  /** Fraction of kernel length less that of the batch's other beds. */
  readonly difference: Interval;
  /** Corrected over the beds compared (Holm). */
  readonly p: number;
  readonly coolerByKelvin: number | null;
}

/**
 * Growth from several counts on the way: length = rate × (bed temperature − base) × hours − lag. Counts at unloading are
 * in it too, of all beds whose temperature is known.
 */
export interface GrowthModel {
  readonly runs: number;
  readonly counts: number;
  /** Batches of which a bed was counted twice or more on the way: those that part hours from temperature. */
  readonly runsCountedTwice: number;
  /** °C below which nothing grows, fitted from the house's own runs, profile interval. */
  readonly baseCelsius: Interval;
  readonly lengthPerHundredDegreeHours: Interval;
  /** Growth, as a fraction of kernel length, before any acrospire shows. */
  readonly lag: Interval;
  /** How much batches differ in their own rate: standard deviation in per cent of the rate. */
  readonly runToRunPercent: number;
  /** Root mean square of counts about the fit, fraction of kernel length. */
  readonly residualLength: number;
  /** Counts with their degree-hours, and the fitted line. */
  readonly points: readonly {
    readonly run: string;
    readonly variety: string | null;
    readonly hours: number;
    readonly celsius: number;
    readonly degreeHours: number;
    readonly length: number;
    readonly counted: number;
  }[];
  readonly line: readonly {
    readonly degreeHours: number;
    readonly length: number;
    readonly low: number;
    readonly high: number;
  }[];
  /** Bed temperatures that the counts cover, °C: beyond them it refuses. */
  readonly coversCelsius: readonly [number, number];
  /** Degree-hours above the base that the counts cover: an aim that lies beyond them gets no hours. */
  readonly coversDegreeHours: readonly [number, number];
  /** For bed temperatures in that range: hours to reach the aim, against the timetable's hours. */
  readonly timetable: {
    readonly aimLength: number;
    readonly usualHours: number;
    readonly rows: readonly {
      readonly celsius: number;
      readonly hours: Interval;
      readonly againstTimetableHours: Interval;
      /** Longer than any bed was counted: its degree-hours are covered, its hours are not. */
      readonly beyondHoursCounted: boolean;
      /** Mean length at unloading were the bed kept the usual hours. */
      readonly lengthAtUsualHours: Interval;
    }[];
    /** Whole degrees that the counts cover and for which no hours are named, with the reason as a sentence. */
    readonly refused: readonly { readonly celsius: number; readonly reason: string }[];
  } | null;
}

/** How many kernels it takes to see a difference between two counts, in four of five cases and at the usual level of 5 %. */
export interface CountSize {
  /** Kernels in the usual count. */
  readonly usual: number;
  /** From kernel to kernel within a count, fraction of kernel length. */
  readonly kernelStandardDeviation: number;
  /** The difference in mean length that two usual counts mostly show. */
  readonly lengthSeen: number;
  /** Kernels in each of two counts, for a few differences in mean length. */
  readonly forLength: readonly { readonly difference: number; readonly kernels: number }[];
  /** The same for the overgrown share: from the usual share to that many points more. */
  readonly forOvergrown: readonly {
    readonly fromPercent: number;
    readonly toPercent: number;
    readonly kernels: number;
  }[];
}

export interface SteepGerminationResult {
  /** By start of steep, earliest first. */
  readonly steeps: readonly SteepRun[];
  readonly steepTooLittle: string | null;
  readonly bias: SteepBias | null;
  readonly uptake: UptakeModel | null;
  readonly uptakeTooLittle: string | null;
  readonly chitted: {
    readonly batches: number;
    readonly medianPercent: number;
    readonly below: readonly string[];
    readonly lowPercent: number;
  } | null;
  readonly acrospires: readonly AcrospireRun[];
  readonly acrospireTooLittle: string | null;
  readonly beds: {
    readonly compared: number;
    readonly lags: readonly BedLag[];
    /** Each bed against the others of its batches, averaged; beds with five such batches or more. */
    readonly byBed: readonly {
      readonly bed: string;
      readonly runs: number;
      readonly difference: Interval;
      readonly warmerByKelvin: number | null;
    }[];
  };
  /** Null with a sentence where two or more counts in ten or more runs are not there. */
  readonly growth: GrowthModel | null;
  readonly growthTooLittle: string | null;
  /** What a count can show and what it cannot; null without counts. */
  readonly countSize: CountSize | null;
  /** Final length against bed temperature; all that a fixed timetable with one count can say. */
  readonly lengthOnTemperature: {
    readonly batches: number;
    readonly perKelvin: Interval;
    readonly line: readonly {
      readonly celsius: number;
      readonly length: number;
      readonly low: number;
      readonly high: number;
    }[];
  } | null;
}
