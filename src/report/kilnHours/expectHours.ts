import { predict } from "../../analysis/predict.ts";
import type { Prediction } from "../../analysis/regressionFit.ts";
import type { DryingAirModel, HoursAnalysis, HumidityDepthModel } from "../kilnHoursResult.ts";
import { PLANNING_LEVEL } from "./hoursAnalysis.ts";
import { dryAirNeeded } from "./modelRow.ts";

/** What is known when a kiln is loaded, of a real load or of one that a reader imagines. */
export interface KnownAtLoading {
  readonly relativeHumidityPercent: number;
  readonly celsius: number | null;
  readonly bedDepthMetres: number;
  readonly greenLoadKilograms: number | null;
  readonly greenMoisturePercent: number | null;
  readonly grainInKilograms: number | null;
  readonly dryingSetCelsius: number | null;
  /** How much of the hold the fan runs; where it is not known, as in the latest loads. */
  readonly fanShareOfHold?: number | null;
}

export interface Expectation {
  readonly prediction: Prediction;
  readonly model: HumidityDepthModel | DryingAirModel;
  /** Further from the fit than any load in it: nothing should be estimated. */
  readonly outsideExperience: boolean;
}

/** Two loads at the edge of experience may differ in the last digits of their leverage. */
const LEVERAGE_TOLERANCE = 1e-9;

function judge(model: HumidityDepthModel | DryingAirModel, x: readonly number[]): Expectation {
  const prediction = predict(model.fit, x, PLANNING_LEVEL);
  const furthest = model.fit.leverage.reduce((most, value) => Math.max(most, value), 0);
  return { prediction, model, outsideExperience: prediction.leverage > furthest * (1 + LEVERAGE_TOLERANCE) };
}

function withDryingAir(model: DryingAirModel, known: KnownAtLoading): Expectation | null {
  const { filling } = model;
  const nothingLogged = known.greenLoadKilograms === null && known.grainInKilograms === null;
  const greenLoadKilograms =
    nothingLogged && filling.greenKilogramsPerMetre !== null
      ? filling.greenKilogramsPerMetre * known.bedDepthMetres
      : known.greenLoadKilograms;
  const fanShareOfHold = known.fanShareOfHold ?? filling.fanShareOfHold;
  const needed = dryAirNeeded({ ...known, greenLoadKilograms, fanShareOfHold }, known, known.dryingSetCelsius, filling);
  return needed === null ? null : judge(model, [needed.tonnes, known.bedDepthMetres]);
}

/**
 * The hours that the best model of `analysis` expects, with its planning interval. Falls back from the drying-air model
 * to the plain one where the load lacks what the former needs.
 *
 * @returns null where the analysis has no model
 */
export function expectHours(analysis: HoursAnalysis, known: KnownAtLoading): Expectation | null {
  const { best, dryingAir, humidityDepth } = analysis;
  if (best === "drying-air" && dryingAir !== null) {
    const expected = withDryingAir(dryingAir, known);
    if (expected !== null) return expected;
  }
  return humidityDepth === null ? null : judge(humidityDepth, [known.relativeHumidityPercent, known.bedDepthMetres]);
}
