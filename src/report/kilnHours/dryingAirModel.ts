import type { Factorisation } from "../../analysis/factorisation.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import { linearCombination } from "../../analysis/predict.ts";
import { mean } from "../../analysis/summary.ts";
import type { DryingAirModel, Filling } from "../kilnHoursResult.ts";
import { scaledTerm } from "./effects.ts";
import { fittedLoads } from "./fittedLoads.ts";
import type { ModelRow } from "./modelRow.ts";
import type { OneStep } from "./oneStep.ts";

/** A row whose drying-air predictor is known. */
export type DryingAirRow = ModelRow & { readonly dryAirNeededTonnes: number };

/** A few minutes without the fan in a night are no thermostat of its own. */
const FAN_RUNS_THROUGHOUT = 0.99;

export const hasDryAir = (row: ModelRow): row is DryingAirRow => row.dryAirNeededTonnes !== null;

export const dryingAirColumns = (rows: readonly DryingAirRow[]) => [
  { name: "dryAirNeededTonnes", label: "air needed", values: rows.map((row) => row.dryAirNeededTonnes) },
  { name: "bedDepthMetres", label: "bed depth", values: rows.map((row) => row.bedDepthMetres) },
];

/**
 * Ordinary least squares of hours on the dry air that the water needs, and bed depth.
 *
 * A deeper bed acts twice: it holds more water, and it slows the fan. So an effect of one centimetre is a combination of
 * both coefficients, with the air that one centimetre of this house's bed needs on average.
 *
 * @param factorisation of {@link dryingAirColumns} over the same rows
 */
export function dryingAirModel(
  rows: readonly DryingAirRow[],
  filling: Filling,
  oneStep: readonly OneStep[],
  factorisation: Factorisation,
): DryingAirModel {
  const fit = fitLeastSquares(
    dryingAirColumns(rows),
    rows.map((row) => row.hours),
    { factorisation },
  );
  const tonnesPerMetre = mean(rows.map((row) => row.dryAirNeededTonnes / row.bedDepthMetres));
  return {
    kind: "drying-air",
    fit,
    loads: fittedLoads(rows, fit, oneStep),
    dryAirNeededTonnes: Float64Array.from(rows, (row) => row.dryAirNeededTonnes),
    hoursPerTonneOfAir: scaledTerm(fit, "dryAirNeededTonnes", 1),
    hoursPerCentimetre: linearCombination(fit, [0, tonnesPerMetre * 0.01, 0.01]),
    filling,
    loadsWithFanStops: rows.filter(({ load }) => (load.fanShareOfHold ?? 1) < FAN_RUNS_THROUGHOUT).length,
    loadsWithUsualGain: rows.filter((row) => row.usedUsualGain).length,
  };
}
