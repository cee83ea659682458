import { studentTQuantile } from "./distributions.ts";
import type { PredictorColumn } from "./factorisation.ts";
import type { Prediction } from "./regressionFit.ts";
import { TriangularFactor } from "./triangularFactor.ts";

/**
 * What a least-squares fit of the earlier observations alone said of each one, in time order, with its prediction
 * interval: the honest test of a regression that is meant to foretell. Null where fewer than `minimumObservations`
 * had come (never fewer than one more than there are coefficients), or where a predictor had not varied yet.
 *
 * The triangular factor is updated by one row at a time with Givens rotations (Golub and Van Loan, Matrix Computations,
 * updating QR by a row; from memory), so that 2,000 observations cost about as much as one fit of them all.
 *
 * @throws RangeError for columns of another length than `response`, values that are not finite, or a level outside 0 to 1
 */
export function rollingForecasts(
  columns: readonly PredictorColumn[],
  response: ArrayLike<number>,
  minimumObservations: number,
  level: number,
  options: { readonly intercept?: boolean } = {},
): readonly (Prediction | null)[] {
  if (!(level > 0 && level < 1))
    throw new RangeError(`rollingForecasts requires a level between 0 and 1; got ${level}`);
  const intercept = options.intercept ?? true;
  const parameters = columns.length + (intercept ? 1 : 0);
  for (const { name, values } of columns) {
    if (values.length !== response.length) {
      throw new RangeError(`${name} requires one value an observation; got ${values.length} for ${response.length}`);
    }
  }
  const factor = new TriangularFactor(parameters);
  const forecasts: (Prediction | null)[] = [];
  const row = new Float64Array(parameters);
  for (let at = 0; at < response.length; at += 1) {
    if (intercept) row[0] = 1;
    columns.forEach(({ values }, column) => {
      row[column + (intercept ? 1 : 0)] = values[at] as number;
    });
    const observed = response[at] as number;
    if (!(Number.isFinite(observed) && row.every(Number.isFinite))) {
      throw new RangeError(`rollingForecasts requires finite values; got another at ${at}`);
    }
    const known = at >= Math.max(minimumObservations, parameters + 1) && factor.isFullRank();
    forecasts.push(known ? foretell(factor, row, level) : null);
    factor.append(row, observed);
  }
  return forecasts;
}

const quantiles = new Map<string, number>();

/** Every fit of a house asks for the same few thousand again, and each takes longer than the rest of a forecast. */
function tQuantile(p: number, degreesOfFreedom: number): number {
  const key = `${p} ${degreesOfFreedom}`;
  const known = quantiles.get(key) ?? studentTQuantile(p, degreesOfFreedom);
  quantiles.set(key, known);
  return known;
}

function foretell(factor: TriangularFactor, row: Float64Array, level: number): Prediction {
  const { estimate, leverage } = factor.project(row);
  const degreesOfFreedom = factor.observations - factor.parameters;
  const spread = Math.sqrt(factor.residualSquares / degreesOfFreedom);
  const meanStandardError = spread * Math.sqrt(leverage);
  const predictionStandardError = spread * Math.sqrt(1 + leverage);
  const reach = tQuantile(0.5 + level / 2, degreesOfFreedom) * predictionStandardError;
  return {
    estimate,
    low: estimate - reach,
    high: estimate + reach,
    meanStandardError,
    predictionStandardError,
    leverage,
  };
}
