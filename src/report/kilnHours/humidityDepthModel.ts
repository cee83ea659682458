import { addedVariable } from "../../analysis/addedVariable.ts";
import type { Factorisation } from "../../analysis/factorisation.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import { mean } from "../../analysis/summary.ts";
import type { HumidityDepthModel } from "../kilnHoursResult.ts";
import { scaledTerm } from "./effects.ts";
import { fittedLoads } from "./fittedLoads.ts";
import type { ModelRow } from "./modelRow.ts";
import type { OneStep } from "./oneStep.ts";

/** The predictors of the plain regression, in the order of its coefficients after the intercept. */
export const humidityDepthColumns = (rows: readonly ModelRow[]) => [
  { name: "relativeHumidityPercent", label: "humidity", values: rows.map((row) => row.air.relativeHumidityPercent) },
  { name: "bedDepthMetres", label: "bed depth", values: rows.map((row) => row.bedDepthMetres) },
];

/**
 * Ordinary least squares of hours on ambient relative humidity and bed depth, and what it says in a maltster's units.
 *
 * @param factorisation of {@link humidityDepthColumns} over the same rows
 * @param plotted with added-variable plots
 */
export function humidityDepthModel(
  rows: readonly ModelRow[],
  oneStep: readonly OneStep[],
  factorisation: Factorisation,
  plotted: boolean,
): HumidityDepthModel {
  const columns = humidityDepthColumns(rows);
  const hours = rows.map((row) => row.hours);
  const fit = fitLeastSquares(columns, hours, { factorisation });
  const [humidity, depth] = columns.map(({ values }) => mean(values)) as [number, number];
  return {
    kind: "humidity-and-depth",
    fit,
    loads: fittedLoads(rows, fit, oneStep),
    hoursPerTenPoints: scaledTerm(fit, "relativeHumidityPercent", 10),
    hoursPerCentimetre: scaledTerm(fit, "bedDepthMetres", 0.01),
    addedVariable: plotted
      ? [
          { predictor: "relativeHumidityPercent", ...addedVariable(columns, hours, 0, { fit }), otherHeldAt: depth },
          { predictor: "bedDepthMetres", ...addedVariable(columns, hours, 1, { fit }), otherHeldAt: humidity },
        ]
      : [],
    meanRelativeHumidityPercent: humidity,
    meanBedDepthMetres: depth,
  };
}
