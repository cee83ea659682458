import { studentTQuantile } from "./distributions.ts";
import { type Factorisation, factorise, type PredictorColumn } from "./factorisation.ts";
import { isFitFault, sayFitFault } from "./fitFault.ts";
import { fitLeastSquares } from "./fitLeastSquares.ts";
import { predict } from "./predict.ts";
import type { RegressionFit } from "./regressionFit.ts";
import { mean } from "./summary.ts";

/** Response and one predictor, both with the other predictors taken out, about their means. */
export interface AddedVariable {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly line: readonly { readonly x: number; readonly y: number; readonly low: number; readonly high: number }[];
}

/**
 * Added-variable (partial regression) plot of the predictor at `index`: what is left of it and of the response once the
 * other predictors have explained what they can, each put back about its mean so that axes read in natural units. The
 * slope through the points is the coefficient of the whole fit, and their residuals are its residuals (Cook and
 * Weisberg 1982, Residuals and Influence in Regression, 2.3; from memory). `line` is the whole fit with the others held
 * at their means, with the interval of its mean, at `points` evenly spaced x.
 *
 * @param options.fit the fit of the same columns and response, where it has been made
 * @throws RangeError where the data cannot carry the fit, or for an index without a column
 */
export function addedVariable(
  columns: readonly PredictorColumn[],
  response: ArrayLike<number>,
  index: number,
  options: { readonly points?: number; readonly level?: number; readonly fit?: RegressionFit } = {},
): AddedVariable {
  const column = columns[index];
  if (!column) throw new RangeError(`addedVariable requires a column from 0 to ${columns.length - 1}; got ${index}`);
  const fit = options.fit ?? fitLeastSquares(columns, response);
  const others = columns.filter((_, at) => at !== index);
  const factorisation = others.length === 0 ? null : factorise(others, true);
  if (factorisation !== null && isFitFault(factorisation))
    throw new RangeError(`no fit: ${sayFitFault(factorisation)}`);
  const x = aboutMean(column.values, others, factorisation);
  const y = aboutMean(response, others, factorisation);
  const points = options.points ?? 41;
  const level = options.level ?? 0.95;
  const low = x.reduce((least, value) => Math.min(least, value));
  const high = x.reduce((most, value) => Math.max(most, value));
  const held = columns.map(({ values }) => mean(values));
  const tQuantile = studentTQuantile(0.5 + level / 2, fit.degreesOfFreedom);
  const line = Array.from({ length: points }, (_, at) => {
    const position = at === points - 1 ? high : low + ((high - low) * at) / (points - 1);
    const { estimate, meanStandardError } = predict(fit, held.with(index, position));
    const reach = tQuantile * meanStandardError;
    return { x: position, y: estimate, low: estimate - reach, high: estimate + reach };
  });
  return { x, y, line };
}

/** The part of `values` that the others and a constant do not explain, about the mean. */
function aboutMean(
  values: ArrayLike<number>,
  others: readonly PredictorColumn[],
  factorisation: Factorisation | null,
): Float64Array {
  const centre = mean(values);
  if (factorisation === null) return Float64Array.from(values);
  const coefficients = factorisation.solve(values);
  return Float64Array.from(values, (value, row) =>
    others.reduce(
      (rest, other, at) => rest - (coefficients[at + 1] as number) * (other.values[row] as number),
      value - (coefficients[0] as number) + centre,
    ),
  );
}
