import { doesNotVary, type Factorisation, factorise, type PredictorColumn } from "./factorisation.ts";
import { type FitFault, type FitWords, isFitFault, plainWords, sayFitFault } from "./fitFault.ts";

/**
 * The design taken apart for a fit of `response`, or what forbids that fit. `minimumObservations` is the caller's own floor;
 * two more than there are coefficients are needed in any case.
 *
 * @throws RangeError for lengths that differ or values that are not finite
 */
export function factoriseForFit(
  columns: readonly PredictorColumn[],
  response: ArrayLike<number>,
  minimumObservations = 0,
  intercept = true,
): Factorisation | FitFault {
  const observations = response.length;
  const fewest = Math.max(minimumObservations, columns.length + (intercept ? 1 : 0) + 2);
  if (observations < fewest) return { kind: "too-few", observations, needed: fewest };
  const factorisation = factorise(columns, intercept);
  if (isFitFault(factorisation)) return factorisation;
  return findResponseFault(response, factorisation.observations, intercept) ?? factorisation;
}

/** What {@link factoriseForFit} says forbids fitting `response` on `columns`, or null where nothing does. */
export function findFitFault(
  columns: readonly PredictorColumn[],
  response: ArrayLike<number>,
  minimumObservations = 0,
  intercept = true,
): FitFault | null {
  const found = factoriseForFit(columns, response, minimumObservations, intercept);
  return isFitFault(found) ? found : null;
}

/** The fault that lies in the response alone. */
export function findResponseFault(
  response: ArrayLike<number>,
  observations: number,
  intercept: boolean,
): FitFault | null {
  if (response.length !== observations) {
    throw new RangeError(`the response requires one value an observation; got ${response.length} for ${observations}`);
  }
  for (let row = 0; row < response.length; row += 1) {
    if (!Number.isFinite(response[row])) {
      throw new RangeError(`the response requires finite values; got ${response[row]} at ${row}`);
    }
  }
  const flat = doesNotVary(response) && (intercept || response[0] === 0);
  return flat ? { kind: "constant-response", observations } : null;
}

/** {@link findFitFault} as a sentence: `The estimate needs 12 loads with all that it uses; so far there are 9.` */
export function whyNoFit(
  columns: readonly PredictorColumn[],
  response: ArrayLike<number>,
  minimumObservations: number,
  words: FitWords = plainWords,
): string | null {
  const fault = findFitFault(columns, response, minimumObservations);
  return fault === null ? null : sayFitFault(fault, words);
}
