import type { PredictorColumn } from "../factorisation.ts";
import { findFitFault } from "../findFitFault.ts";
import { type FitFault, isFitFault } from "../fitFault.ts";
import { fitLeastSquares } from "../fitLeastSquares.ts";
import type { Interval, RegressionTerm } from "../regressionFit.ts";
import { serialInterval } from "./companionChange.ts";
import { type DriftModelName, type DriftModels, fitDriftModels } from "./driftModels.ts";
import type { DriftSeries } from "./driftSeries.ts";
import { driftShape } from "./driftShape.ts";
import { fewestLoads } from "./fewestLoads.ts";

/** What a covariate that goes with the season explains of a drift, and what it leaves. */
export type SeasonEffect =
  | {
      readonly isApart: true;
      /** Effect of one unit of the covariate with the drift beside it, and without. */
      readonly perUnit: Interval;
      readonly perUnitAlone: Interval;
      /** What the covariate's own change over the loads, from least to most, makes of the value: per unit × range. */
      readonly overItsRange: Interval;
      /** The drift by the last load, with the covariate beside it, and without. */
      readonly drift: Interval;
      readonly driftAlone: Interval;
      /** The kind of change beside the covariate; `constant`: a straight line. */
      readonly besideModel: DriftModelName;
      readonly varianceInflation: number;
      /** BIC of the covariate alone, the drift alone, and both: the least explains best. */
      readonly bic: { readonly season: number; readonly drift: number; readonly both: number };
    }
  /** Drift and covariate move together so closely that either would do. */
  | { readonly isApart: false; readonly varianceInflation: number };

/** Variance inflation from which two causes are not parted: the usual mark of 10 (Marquardt 1970, Technometrics 12, 591–612; from memory). */
const mostInflation = 10;

/**
 * Partial regression of the value on a covariate (ambient temperature, duty) beside the drift's course: a thermostat that only
 * follows the season has a covariate effect and no drift beside it. The course is fitted anew with the covariate taken out, of
 * the kind that wins then, which may be another than without it; where none does it is a straight line. Weights are left out. One covariate at a time: two that both go with the season would hide
 * each other.
 *
 * @param models fitted to the same series without the covariate
 * @returns a fault, which `sayFitFault` says as a sentence, where the loads cannot carry both
 * @throws RangeError for lengths that differ or a value that is not finite
 */
export function seasonEffect(
  series: DriftSeries,
  covariate: PredictorColumn,
  models: DriftModels,
): SeasonEffect | FitFault {
  const { days, values } = series;
  const beside = fitDriftModels({ days, values, covariates: [covariate] });
  if (isFitFault(beside)) return beside;
  const alone = driftShape(models);
  // A season may have made a step of a creep. And where it leaves no change, the best-looking course would still seem to be
  // one in a third of such series, having been chosen for it; a straight line has not.
  const besideShape = driftShape(beside);
  const column = (course: Float64Array): PredictorColumn => ({
    name: "drift",
    label: "course of the drift",
    values: course,
  });
  const together = [column(besideShape.values), covariate];
  const fault =
    findFitFault(together, values, fewestLoads + 1) ??
    findFitFault([column(alone.values), covariate], values, fewestLoads + 1);
  if (fault) return fault.kind === "collinear" ? { isApart: false, varianceInflation: Infinity } : fault;

  const both = fitLeastSquares(together, values);
  const [, drift, perUnit] = both.terms as [RegressionTerm, RegressionTerm, RegressionTerm];
  // The course fitted without the covariate may be the one that only follows it.
  const plain = fitLeastSquares([column(alone.values), covariate], values);
  const varianceInflation = Math.max(drift.varianceInflation ?? 1, plain.terms[1]?.varianceInflation ?? 1);
  if (varianceInflation >= mostInflation) return { isApart: false, varianceInflation };
  const seasonFit = fitLeastSquares([covariate], values);
  const driftFit = fitLeastSquares([column(alone.values)], values);
  const effect = serialInterval(perUnit, both);
  const range = rangeOf(covariate.values);
  const bicOf = (of: DriftModels, name: string): number =>
    of.scores.find(({ model }) => model === name)?.bic ?? Infinity;
  const lineBic = (squaredSpread: number, degrees: number, parameters: number): number => {
    const count = values.length;
    return count * (Math.log((2 * Math.PI * squaredSpread * degrees) / count) + 1) + parameters * Math.log(count);
  };
  // A straight line, where no change won, is none of the models; it has a level, a slope and a spread.
  const isLine = alone.model === "constant";
  return {
    isApart: true,
    perUnit: effect,
    perUnitAlone: serialInterval(seasonFit.terms[1] as RegressionTerm, seasonFit),
    overItsRange: { estimate: effect.estimate * range, low: effect.low * range, high: effect.high * range },
    drift: serialInterval(drift, both),
    driftAlone: serialInterval(driftFit.terms[1] as RegressionTerm, driftFit),
    besideModel: besideShape.model,
    varianceInflation,
    bic: {
      season: bicOf(beside, "constant"),
      drift: isLine
        ? lineBic(driftFit.residualStandardDeviation ** 2, driftFit.degreesOfFreedom, 3)
        : bicOf(models, alone.model),
      both:
        besideShape.model === "constant"
          ? lineBic(both.residualStandardDeviation ** 2, both.degreesOfFreedom, 4)
          : bicOf(beside, besideShape.model),
    },
  };
}

function rangeOf(values: ArrayLike<number>): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < values.length; at += 1) {
    low = Math.min(low, values[at] as number);
    high = Math.max(high, values[at] as number);
  }
  return high - low;
}
