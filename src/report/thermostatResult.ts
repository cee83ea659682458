import type { ModelScore } from "../analysis/drift/driftModels.ts";
import type { LeavesTolerance } from "../analysis/drift/leavesTolerance.ts";
import type { Interval } from "../analysis/regressionFit.ts";
import type { ThermostatLoad } from "../malting/thermostat/thermostatLoad.ts";
import type { EventRow } from "./eventRow.ts";

export type HoldName = "drying" | "cure";

/** One load as the drift of one hold sees it. */
export interface OffsetPoint {
  readonly load: string;
  readonly runs: readonly string[];
  readonly at: number;
  /**
   * Whole-cycle time mean less set point, at the house's usual heater duty, corrected for the logger where a check allows it; K.
   */
  readonly offsetKelvin: number;
  readonly standardErrorKelvin: number | null;
  readonly duty: number | null;
  readonly swingKelvin: number | null;
  readonly riseKelvinPerMinute: number | null;
  readonly setCelsius: number;
  /** Index into `stretches`. */
  readonly stretch: number;
}

/** Loads between one calibration or repair of the thermostat and the next. */
export interface ThermostatStretch {
  /** `since the first load`, or what was done: `kiln thermostat set right against reference`. */
  readonly name: string;
  readonly event: EventRow | null;
  readonly from: number;
  readonly to: number;
  readonly loads: number;
  /** Null with a sentence in `tooLittle` where the loads are too few. */
  readonly alarm: StretchAlarm | null;
  readonly models: StretchModels | null;
  readonly tooLittle: string | null;
}

/** What the two charts say of a stretch; they alone alarm. */
export interface StretchAlarm {
  readonly baselineLoads: number;
  readonly baselineLevelKelvin: number;
  readonly sigmaKelvin: number;
  /** Deviations from the baseline's level after it, one a load, with the half-width of the limits. */
  readonly weightedMean: { readonly means: Float64Array; readonly reach: Float64Array };
  readonly alarms: readonly {
    readonly fromLoad: string;
    readonly raisedAtLoad: string;
    readonly raisedAt: number;
    /** Moment of the load at which it ended by itself, ten loads back inside; null where it stands, or stood to the stretch's end. */
    readonly endedAt: number | null;
    readonly direction: "up" | "down";
    readonly raisedBy: readonly ("weightedMean" | "cumulativeSum")[];
  }[];
}

/** What a change looks like; it raises no alarm. Moments are milliseconds UTC. */
export interface StretchModels {
  readonly winner: "constant" | "step" | "creep";
  readonly isClear: boolean;
  readonly scores: readonly ModelScore[];
  /** Of the winner; null for a constant. `none`: no such moment can be named. */
  readonly onset: { readonly estimate: number; readonly low: number; readonly high: number } | null;
  /** Kelvins a month of 30.44 days, for a creep. */
  readonly kelvinPerMonth: Interval | null;
  /** Kelvins, for a step. */
  readonly stepKelvin: Interval | null;
  /** Level before the change, K; the level of all for a constant. */
  readonly levelKelvin: Interval;
  /** The winner's line, to draw: moments and kelvins. */
  readonly line: readonly { readonly at: number; readonly kelvin: number }[];
  /** When it leaves the tolerance, moments instead of days. */
  readonly leaves: LeavesTolerance;
  /** Theil–Sen slope after the onset, K a month; only for a creep. */
  readonly theilSenKelvinPerMonth: Interval | null;
  readonly mannKendallP: number | null;
  readonly pettitt: { readonly at: number; readonly p: number } | null;
}

/** Evidence on the kind of change, with its size; none of it is a verdict. */
export interface DriftEvidence {
  readonly kind: "set point" | "worn contacts" | "weak heater or fan" | "season";
  /** Speaks for this kind, against it, or cannot be told. */
  readonly speaks: "for" | "against" | "open";
  /**
   * How far the kind's own measure has moved, 95 % interval: the middle of the cycles, K; their swing, K; the rise at full
   * power, K a minute; for a season what the air outside explains over its range, K. Null where `unknown` says why.
   */
  readonly change: Interval | null;
  /** Swing (K) or rise (K a minute) before it moved; null for the other kinds. */
  readonly before: number | null;
  /** The change that is left beside the season, K; null for the other kinds. */
  readonly beside: Interval | null;
  /** Whether `change` is at equal air outside: a heater lifts cold air to the same temperature more slowly. */
  readonly isAtEqualAir: boolean;
  /** Why there is no size: the measure is read in too few loads, or the air changed along with the offset. */
  readonly unknown: "too few" | "together" | null;
}

/**
 * Whether a probe that is not the thermostat's moved along with the change of the latest stretch: where the thermostat moved it does,
 * where only the air-on probe reads otherwise it does not.
 */
export interface ProbeEvidence {
  readonly probe: "air_off" | "bed";
  readonly speaks: "thermostat" | "logger" | "open";
  /** How far it has moved at equal outside air by the last load, K; null where `loads` with it are too few, or none. */
  readonly change: Interval | null;
  /** How far air on has moved, and the least that the probe would have moved with it, K; signed. */
  readonly airOnKelvin: number;
  readonly leastKelvin: number;
  readonly loads: number;
}

export interface HoldJudgement {
  readonly hold: HoldName;
  readonly points: readonly OffsetPoint[];
  /** Loads without an offset, and why, counted. */
  readonly without: readonly { readonly reason: string; readonly count: number }[];
  readonly stretches: readonly ThermostatStretch[];
  /** On the latest stretch. */
  readonly evidence: readonly DriftEvidence[];
  /** On the latest stretch; empty where nothing has changed. */
  readonly probes: readonly ProbeEvidence[];
}

/** The effect of a drift on the malt, from the models already built. */
export interface DriftEffect {
  readonly measure: "kiln hours" | "final moisture" | "energy";
  /** Hours a load, percentage points, or kWh for a kilogram of water removed, over the loads since the onset; null: cannot be told. */
  readonly effect: Interval | null;
  readonly loads: number;
}

/** A check that found the logger further off than chance gives. */
export interface LoggerFault {
  /** Milliseconds UTC. */
  readonly at: number;
  /** Reading less reference, K. */
  readonly errorKelvin: number;
  /** Temperature at which it was found, °C. */
  readonly aboutCelsius: number;
}

export interface LoggerTrust {
  readonly daysSinceCheck: number | null;
  readonly loggerDays: number;
  readonly stale: boolean;
  /** The latest error found, K at the drying set point, and its standard uncertainty. */
  readonly errorKelvin: number | null;
  readonly uncertaintyKelvin: number | null;
  readonly checks: readonly {
    readonly at: number;
    readonly probe: string;
    readonly referenceCelsius: number;
    readonly readingCelsius: number;
    readonly note: string | null;
  }[];
  /** Boiling water at the house's altitude, °C. */
  readonly boilingCelsius: number;
  /** What its checks found to be the logger's own fault, not a thermostat's. */
  readonly faults: readonly LoggerFault[];
}

export interface KilnThermostat {
  readonly kiln: string;
  readonly loads: readonly ThermostatLoad[];
  readonly drying: HoldJudgement | null;
  readonly cure: HoldJudgement | null;
  /** The fan's own thermostat, where one was set and read. */
  readonly fan: readonly {
    readonly load: string;
    readonly runs: readonly string[];
    readonly at: number;
    readonly setCelsius: number | null;
    readonly offsetKelvin: number | null;
    readonly shareOfHold: number | null;
  }[];
  readonly probeAtBulb: boolean;
  readonly toleranceKelvin: number;
  readonly logger: LoggerTrust;
  readonly effects: readonly DriftEffect[];
  /** Everything logged about thermostat, logger and kiln, by date. */
  readonly events: readonly EventRow[];
  /** The latest load with readings, for the close-up. */
  readonly latestLoad: string | null;
  readonly tooLittle: string | null;
}

export interface ThermostatResult {
  readonly kilns: readonly KilnThermostat[];
}
