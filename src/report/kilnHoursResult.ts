import type { Interval, RegressionFit } from "../analysis/regressionFit.ts";
import type { UsualGain } from "../malting/waterToRemove.ts";
import type { AirBasis } from "./airBasis.ts";
import type { AirCompared } from "./airCompared.ts";

/** A load as the models saw it. Order everywhere: by loading time, then kiln. */
export interface FittedLoad {
  readonly load: string;
  readonly runs: readonly string[];
  readonly variety: string | null;
  readonly kiln: string;
  readonly loadedAt: number;
  readonly hours: number;
  readonly relativeHumidityPercent: number;
  readonly celsius: number | null;
  readonly bedDepthMetres: number;
  readonly fittedHours: number;
  readonly residualHours: number;
  readonly leverage: number;
  readonly cooksDistance: number;
  readonly studentisedResidual: number;
  /** One-step-ahead estimate from the earlier loads alone; null while there were too few. */
  readonly oneStepAhead: Interval | null;
}

/** A load that no fit used, and why, in words: `power-limited`, `left out by hand`, `no bed depth`, `still in the kiln`. */
export interface UnfittedLoad {
  readonly load: string;
  readonly runs: readonly string[];
  readonly kiln: string;
  readonly loadedAt: number;
  readonly hours: number | null;
  readonly reason: string;
}

/** An added-variable plot: hours against one predictor, both with the other predictors taken out, about their means. */
export interface AddedVariablePlot {
  readonly predictor: "relativeHumidityPercent" | "bedDepthMetres";
  /** Same order as the model's loads. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** The fitted line with the 95 % band of its mean, at evenly spaced x. */
  readonly line: readonly { readonly x: number; readonly y: number; readonly low: number; readonly high: number }[];
  /** What the other predictor is held at. */
  readonly otherHeldAt: number;
}

/** Hours on ambient relative humidity (%) and bed depth (m). */
export interface HumidityDepthModel {
  readonly kind: "humidity-and-depth";
  readonly fit: RegressionFit;
  readonly loads: readonly FittedLoad[];
  readonly hoursPerTenPoints: Interval;
  readonly hoursPerCentimetre: Interval;
  /** For kiln hours; none for drying hours, which no page draws. */
  readonly addedVariable: readonly AddedVariablePlot[];
  readonly meanRelativeHumidityPercent: number;
  readonly meanBedDepthMetres: number;
}

/**
 * Hours on the dry air that the water needs (tonnes: water to remove over the air's drying power, over the share of the hold in
 * which the fan ran) and bed depth (m).
 */
export interface DryingAirModel {
  readonly kind: "drying-air";
  readonly fit: RegressionFit;
  readonly loads: readonly FittedLoad[];
  /** Same order as `loads`. */
  readonly dryAirNeededTonnes: Float64Array;
  /** Hours for each tonne of dry air that the water needs. */
  readonly hoursPerTonneOfAir: Interval;
  /** Hours for 1 cm more bed with the grain that fills it, in the same air. */
  readonly hoursPerCentimetre: Interval;
  /** How this house fills its kiln, for a what-if without a green load. */
  readonly filling: Filling;
  /** Loads whose fan stood still for part of the hold, and whose air counts for less. */
  readonly loadsWithFanStops: number;
  /** Loads for which the green load or its moisture was not logged and the house's usual was taken. */
  readonly loadsWithUsualGain: number;
}

/** What a house usually puts on its kiln: medians over the loads that logged them. */
export interface Filling {
  /** Null where no load logged both. */
  readonly greenKilogramsPerMetre: number | null;
  readonly usualGain: UsualGain | null;
  /** Share of the hold in which the fan ran in the latest loads; 1 where that is not logged. */
  readonly fanShareOfHold: number;
  readonly dryingSetCelsius: number | null;
  readonly targetMoisturePercent: number;
  readonly pressurePascals: number;
}

/** One way of guessing the next load's hours, judged on loads it had not seen. */
export interface Guess {
  readonly kind: "drying-air" | "humidity-and-depth" | "last-five" | "mean-so-far";
  /** Root mean square one-step-ahead error, hours, on the loads all guesses share. */
  readonly rootMeanSquareHours: number;
  readonly meanAbsoluteHours: number;
}

export interface GuessComparison {
  /** Best first. */
  readonly guesses: readonly Guess[];
  readonly loads: number;
  /** Best minus second best, as a mean difference of squared errors with its 95 % interval. */
  readonly bestOverSecond: Interval | null;
  /** Named only where that interval excludes 0. */
  readonly winner: Guess["kind"] | null;
}

/** How often the 90 % interval, made before each load, held what came. */
export interface Coverage {
  readonly held: number;
  readonly of: number;
  /** Wilson 95 % interval of the share, in per cent. */
  readonly percent: Interval;
}

export interface LoadEnergy {
  readonly load: string;
  readonly loadedAt: number;
  readonly kilowattHours: number;
  readonly waterRemovedKilograms: number;
  readonly kilowattHoursPerKilogramWater: number;
}

export interface EnergySummary {
  readonly loads: readonly LoadEnergy[];
  readonly medianKilowattHours: number;
  readonly medianPerKilogramWater: number;
  /** The least that evaporation alone would take, kWh a kilogram of water, and the temperature it is stated at. */
  readonly latentHeatFloor: number;
  readonly floorCelsius: number;
}

/** One outcome (kiln hours, or drying hours to the start of the cure) with everything said of it. */
export interface HoursAnalysis {
  readonly outcome: "kiln-hours" | "drying-hours";
  /** Loads with this outcome logged. */
  readonly loadsWithHours: number;
  readonly medianHours: number | null;
  /** Tenth and ninetieth percentile, where there are ten loads or more. */
  readonly usualRange: readonly [number, number] | null;
  /** Null with a sentence in `tooLittle` where the logs do not carry it. */
  readonly humidityDepth: HumidityDepthModel | null;
  readonly dryingAir: DryingAirModel | null;
  readonly guesses: GuessComparison | null;
  readonly coverage: Coverage | null;
  /** The regression that answers what-if: the winner where one is named, else the one with the smaller error so far. */
  readonly best: "drying-air" | "humidity-and-depth" | null;
  /**
   * Loads together slower or faster than the best model expects, in time order; empty where there are none, null where
   * nobody has looked: the shuffles that they are judged by take as long as all else together.
   */
  readonly stretches: readonly Stretch[] | null;
  /** `9 loads with humidity and depth; the estimate needs 12.` */
  readonly tooLittle: string | null;
}

export interface KilnHoursResult {
  readonly airBasis: AirBasis;
  /** How many loads had each kind of air, so that the page can say what was chosen and what else there is. */
  readonly loadsByAir: Readonly<Record<AirBasis, number>>;
  /** Where that air comes from, and how far the two sources of it lie apart. */
  readonly airCompared?: AirCompared;
  readonly kilnHours: HoursAnalysis;
  readonly dryingHours: HoursAnalysis;
  readonly unfitted: readonly UnfittedLoad[];
  readonly energy: EnergySummary | null;
  /** Loads under way, with the estimate of the best model. */
  readonly underWay: readonly UnderWay[];
  /** Starting values of the what-if: what this house usually loads. */
  readonly usual: WhatIfInputs | null;
}

export interface UnderWay {
  readonly load: string;
  readonly runs: readonly string[];
  readonly kiln: string;
  readonly loadedAt: number;
  readonly hours: Interval | null;
  readonly whyNot: string | null;
}

/** Consecutive loads whose residuals, taken together, stand clear of what chance gives. */
export interface Stretch {
  readonly loads: readonly string[];
  readonly from: number;
  readonly to: number;
  readonly meanResidualHours: number;
}

/** All in SI; `startedAtMinutes` and `wantedFinishMinutes` are minutes after local midnight. */
export interface WhatIfInputs {
  readonly relativeHumidityPercent: number;
  /** Null where the house logs no air temperature. */
  readonly celsius: number | null;
  readonly bedDepthMetres: number;
  readonly greenLoadKilograms: number | null;
  /** Null where the house logs no set point. */
  readonly dryingSetCelsius: number | null;
  readonly startedAtMinutes: number;
  readonly wantedFinishMinutes: number | null;
}
