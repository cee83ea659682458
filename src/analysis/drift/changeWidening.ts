import type { Factorisation, PredictorColumn } from "../factorisation.ts";
import { factoriseForFit } from "../findFitFault.ts";
import { isFitFault } from "../fitFault.ts";
import { fitLeastSquares } from "../fitLeastSquares.ts";
import type { DriftSeries } from "./driftSeries.ts";

/**
 * By how much the residual variance must be raised, so that a change's intervals hold what they claim where the loads are not
 * independent: 1 where nothing speaks against it. The larger of two, since the second shows as the first too:
 *
 * - Neighbouring residuals are alike (their lag-1 interval lies over 0): (1 + r)/(1 − r), the variance of a mean of a
 *   first-order autoregression over that of as many independent loads, 1 over its effective share (Bayley and Hammersley
 *   1946, Supplement to the Journal of the Royal Statistical Society 8, 184–197; from memory).
 * - Errors that loads have in common: what they add to the variance of the change's size, and of its onset, over what
 *   scatter makes of it, at the best fit with the onset's column straightened there.
 *
 * Weights are left out.
 *
 * @param onsetDay of the best fit; for a step the first load after it
 * @param variance residual variance of that fit
 */
export function changeWidening(
  series: DriftSeries,
  kind: "step" | "creep",
  onsetDay: number,
  variance: number,
): number {
  const { values, covariates = [], sharedErrors = [] } = series;
  for (const changes of changeColumns(Float64Array.from(series.days), kind, onsetDay)) {
    const columns = [...changes, ...covariates];
    const factorisation = factoriseForFit(columns, values);
    if (isFitFault(factorisation)) continue;
    const { estimate: alike, low } = fitLeastSquares(columns, values, { factorisation }).lagOneAutocorrelation;
    const serial = low > 0 ? (1 + alike) / (1 - alike) : 1;
    const shared = sharedErrors.map((error) => factorisation.solve(error));
    const added = changes.map((_, at) => {
      const moved = shared.reduce((sum, coefficients) => sum + (coefficients[at + 1] as number) ** 2, 0);
      return moved / (variance * ownShare(factorisation, at + 1));
    });
    return Math.max(serial, 1 + Math.max(...added));
  }
  return 1;
}

/** What the change's size and its onset stand for, in the order in which they are tried. */
function changeColumns(
  days: Float64Array,
  kind: "step" | "creep",
  onsetDay: number,
): readonly (readonly PredictorColumn[])[] {
  if (kind === "step") return [[{ name: "moved", values: days.map((day) => (day >= onsetDay ? 1 : 0)) }]];
  const risen = { name: "risen", values: days.map((day) => Math.max(0, day - onsetDay)) };
  // A creep that begins later lies lower by as much from then on; one that begins with the first load has no level before it.
  const moved = { name: "moved", values: days.map((day) => (day > onsetDay ? 1 : 0)) };
  return [[risen, moved], [risen]];
}

/** Variance of a coefficient for a residual variance of 1. */
function ownShare({ inverseFactor, parameters }: Factorisation, term: number): number {
  return inverseFactor
    .subarray(term * parameters, (term + 1) * parameters)
    .reduce((sum, entry) => sum + entry * entry, 0);
}
