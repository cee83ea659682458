import { breuschPagan } from "./breuschPagan.ts";
import { fUpperTail, studentTQuantile, studentTTwoSidedP } from "./distributions.ts";
import { durbinWatson } from "./durbinWatson.ts";
import type { Factorisation, PredictorColumn } from "./factorisation.ts";
import { factorise } from "./factorisation.ts";
import { findResponseFault } from "./findFitFault.ts";
import { isFitFault, sayFitFault } from "./fitFault.ts";
import { lagOneAutocorrelation } from "./lagOneAutocorrelation.ts";
import { automaticLags, neweyWest } from "./neweyWest.ts";
import type { RegressionFit, RegressionTerm } from "./regressionFit.ts";
import { mean } from "./summary.ts";

export interface FitOptions {
  /** Whether the line or plane may miss the origin; true where not given. */
  readonly intercept?: boolean;
  /** Of the same columns, with or without the intercept as here, where it has been made. */
  readonly factorisation?: Factorisation;
}

/**
 * Ordinary least squares of `response` on `columns`, with every diagnostic of {@link RegressionFit}. Rows stand in time
 * order, since the serial diagnostics read them so. Without an intercept R² and F are about 0, not about the mean.
 * Ask `whyNoFit` first where the data come from logs.
 *
 * Robust errors are HC3, Σ (X′X)⁻¹xᵢ (eᵢ/(1 − hᵢ))² xᵢ′(X′X)⁻¹ (MacKinnon and White 1985; from memory). Newey–West
 * errors come with {@link automaticLags} lags where the residuals' lag-1 interval excludes 0.
 *
 * @throws RangeError where the data cannot carry the fit: fewer than two observations more than coefficients, a
 * predictor or response that does not vary, a predictor that follows from the others, one observation that alone fixes
 * a coefficient; or where lengths differ or a value is not finite
 * @example fitLeastSquares([{ name: "bedDepthMetres", values: [0.1, 0.2, 0.15, 0.2] }], [9, 14, 12, 13])
 */
export function fitLeastSquares(
  columns: readonly PredictorColumn[],
  response: ArrayLike<number>,
  options: FitOptions = {},
): RegressionFit {
  const intercept = options.intercept ?? true;
  const factorisation = options.factorisation ?? factorise(columns, intercept);
  if (isFitFault(factorisation)) throw new RangeError(`no fit: ${sayFitFault(factorisation)}`);
  const fault = findResponseFault(response, factorisation.observations, intercept);
  if (fault) throw new RangeError(`no fit: ${sayFitFault(fault)}`);

  const { observations, parameters, leverage, influence, inverseFactor } = factorisation;
  const degreesOfFreedom = observations - parameters;
  const coefficients = factorisation.solve(response);
  const fitted = fittedValues(columns, coefficients, intercept, observations);
  const residuals = fitted.map((value, row) => (response[row] as number) - value);
  const centre = intercept ? mean(response) : 0;
  const residualSquares = sumOfSquares(residuals);
  const totalSquares = sumOfSquares(Float64Array.from(response, (value) => value - centre));
  const explainedSquares = sumOfSquares(fitted.map((value) => value - centre));
  const residualVariance = residualSquares / degreesOfFreedom;
  const residualStandardDeviation = Math.sqrt(residualVariance);
  const explainedDegrees = parameters - (intercept ? 1 : 0);
  const rSquared = 1 - residualSquares / totalSquares;
  const f = explainedSquares / explainedDegrees / residualVariance;

  const leftOut = residuals.map((residual, row) => residual / (1 - (leverage[row] as number)));
  const studentisedResiduals = residuals.map((residual, row) => {
    const room = 1 - (leverage[row] as number);
    const withoutRow = Math.max(0, residualSquares - (residual * residual) / room) / (degreesOfFreedom - 1);
    return residual === 0 ? 0 : residual / Math.sqrt(withoutRow * room);
  });
  const cooksDistance = leftOut.map((error, row) =>
    error === 0 ? 0 : (error * error * (leverage[row] as number)) / (parameters * residualVariance),
  );
  const lagOne = lagOneAutocorrelation(residuals);
  const related = lagOne.low > 0 || lagOne.high < 0;
  const serial = related ? neweyWest(influence, residuals, parameters, automaticLags(observations)) : null;

  return {
    terms: describeTerms(factorisation, coefficients, {
      residualStandardDeviation,
      robust: robustErrors(influence, leftOut, parameters),
      serial,
      columns,
      intercept,
    }),
    observations,
    degreesOfFreedom,
    residualStandardDeviation,
    rSquared,
    adjustedRSquared: 1 - ((1 - rSquared) * (observations - (intercept ? 1 : 0))) / degreesOfFreedom,
    f,
    fDegreesOfFreedom: [explainedDegrees, degreesOfFreedom],
    fPValue: fUpperTail(f, explainedDegrees, degreesOfFreedom),
    leaveOneOutRootMeanSquare: Math.sqrt(sumOfSquares(leftOut) / observations),
    fitted,
    residuals,
    leverage,
    studentisedResiduals,
    cooksDistance,
    lagOneAutocorrelation: lagOne,
    durbinWatson: durbinWatson(residuals),
    breuschPagan: breuschPagan(columns, residuals),
    covariance: crossProduct(inverseFactor, parameters, residualVariance),
    inverseFactor,
  };
}

function describeTerms(
  { names, parameters, inverseFactor }: Factorisation,
  coefficients: Float64Array,
  errors: {
    readonly residualStandardDeviation: number;
    readonly robust: Float64Array;
    readonly serial: Float64Array | null;
    readonly columns: readonly PredictorColumn[];
    readonly intercept: boolean;
  },
): RegressionTerm[] {
  const degreesOfFreedom = (errors.columns[0]?.values.length ?? 0) - parameters;
  const reach = studentTQuantile(0.975, degreesOfFreedom);
  return names.map((name, term) => {
    const estimate = coefficients[term] as number;
    const unscaled = Math.sqrt(sumOfSquares(inverseFactor.subarray(term * parameters, (term + 1) * parameters)));
    const standardError = errors.residualStandardDeviation * unscaled;
    const robustStandardError = errors.robust[term] as number;
    const t = estimate === 0 ? 0 : estimate / standardError;
    const column = errors.columns[errors.intercept ? term - 1 : term];
    return {
      name,
      estimate,
      standardError,
      t,
      p: studentTTwoSidedP(t, degreesOfFreedom),
      low: estimate - reach * standardError,
      high: estimate + reach * standardError,
      robustStandardError,
      robustLow: estimate - reach * robustStandardError,
      robustHigh: estimate + reach * robustStandardError,
      serialStandardError: errors.serial?.[term] ?? null,
      varianceInflation: column ? varianceInflation(column.values, unscaled, errors.intercept) : null,
    };
  });
}

/** Spread of the coefficient over what it would be if the predictor stood alone: the diagonal of (X′X)⁻¹ times its squares. */
function varianceInflation(values: ArrayLike<number>, unscaled: number, intercept: boolean): number {
  const centre = intercept ? mean(values) : 0;
  return unscaled * unscaled * sumOfSquares(Float64Array.from(values, (value) => value - centre));
}

function fittedValues(
  columns: readonly PredictorColumn[],
  coefficients: Float64Array,
  intercept: boolean,
  observations: number,
): Float64Array {
  const first = intercept ? 1 : 0;
  return new Float64Array(observations).map((_, row) =>
    columns.reduce(
      (sum, { values }, at) => sum + (coefficients[at + first] as number) * (values[row] as number),
      intercept ? (coefficients[0] as number) : 0,
    ),
  );
}

function robustErrors(influence: Float64Array, leftOut: Float64Array, parameters: number): Float64Array {
  return new Float64Array(parameters).map((_, term) =>
    Math.sqrt(sumOfSquares(leftOut.map((error, row) => error * (influence[row * parameters + term] as number)))),
  );
}

/** BB′ times a factor, row-major. */
function crossProduct(factor: Float64Array, size: number, times: number): Float64Array {
  return new Float64Array(size * size).map((_, at) => {
    const row = Math.floor(at / size);
    const column = at % size;
    let sum = 0;
    for (let term = 0; term < size; term += 1) {
      sum += (factor[row * size + term] as number) * (factor[column * size + term] as number);
    }
    return sum * times;
  });
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
