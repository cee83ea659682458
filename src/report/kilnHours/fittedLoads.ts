import type { RegressionFit } from "../../analysis/regressionFit.ts";
import type { FittedLoad } from "../kilnHoursResult.ts";
import type { ModelRow } from "./modelRow.ts";
import type { OneStep } from "./oneStep.ts";

/** A forecast as the pages show it, without what it was made from. */
const intervalOf = (step: OneStep): OneStep =>
  step === null ? null : { estimate: step.estimate, low: step.low, high: step.high };

const at = (values: Float64Array, index: number): number => values[index] ?? Number.NaN;

/** The loads of a fit, each with what the fit says of it. */
export function fittedLoads(
  rows: readonly ModelRow[],
  fit: RegressionFit,
  oneStep: readonly OneStep[],
): readonly FittedLoad[] {
  return rows.map(({ load, hours, air, bedDepthMetres }, index) => ({
    load: load.load,
    runs: load.runs,
    variety: load.variety,
    kiln: load.kiln,
    loadedAt: load.loadedAt,
    hours,
    relativeHumidityPercent: air.relativeHumidityPercent,
    celsius: air.celsius,
    bedDepthMetres,
    fittedHours: at(fit.fitted, index),
    residualHours: at(fit.residuals, index),
    leverage: at(fit.leverage, index),
    cooksDistance: at(fit.cooksDistance, index),
    studentisedResidual: at(fit.studentisedResiduals, index),
    oneStepAhead: intervalOf(oneStep[index] ?? null),
  }));
}
