import { studentTQuantile } from "./distributions.ts";
import type { Interval, Prediction, RegressionFit } from "./regressionFit.ts";

function requireLevel(level: number, caller: string): void {
  if (!(level > 0 && level < 1)) throw new RangeError(`${caller} requires a level between 0 and 1; got ${level}`);
}

/**
 * A weighted sum of a fit's coefficients with its interval, as in `10 points of humidity` (weight 10 on that term) or
 * the mean response at a point. `weights` has one entry a term, the intercept's included.
 *
 * @throws RangeError for another number of weights, or a level outside 0 to 1
 */
export function linearCombination(
  fit: RegressionFit,
  weights: ArrayLike<number>,
  level = 0.95,
): Interval & { readonly standardError: number } {
  requireLevel(level, "linearCombination");
  const estimate = weightedSum(fit, weights);
  const standardError = fit.residualStandardDeviation * Math.sqrt(squaredReach(fit, weights));
  const reach = studentTQuantile(0.5 + level / 2, fit.degreesOfFreedom) * standardError;
  return { estimate, standardError, low: estimate - reach, high: estimate + reach };
}

/**
 * What a fit says of one new observation at `x`, its predictors in the order they were fitted, without the intercept's
 * 1. `low` and `high` are the prediction interval: s √(1 + x′(X′X)⁻¹x) either side by Student's t. For the interval of
 * the mean use `meanStandardError`, or {@link linearCombination}. Extrapolation is the caller's to refuse: compare
 * `leverage` with the largest of the fit.
 *
 * @throws RangeError for another number of predictors, or a level outside 0 to 1
 */
export function predict(fit: RegressionFit, x: ArrayLike<number>, level = 0.95): Prediction {
  requireLevel(level, "predict");
  const point = fit.terms[0]?.name === "intercept" ? [1, ...Array.from(x)] : Array.from(x);
  const estimate = weightedSum(fit, point);
  const leverage = squaredReach(fit, point);
  const meanStandardError = fit.residualStandardDeviation * Math.sqrt(leverage);
  const predictionStandardError = fit.residualStandardDeviation * Math.sqrt(1 + leverage);
  const reach = studentTQuantile(0.5 + level / 2, fit.degreesOfFreedom) * predictionStandardError;
  return {
    estimate,
    low: estimate - reach,
    high: estimate + reach,
    meanStandardError,
    predictionStandardError,
    leverage,
  };
}

function weightedSum(fit: RegressionFit, weights: ArrayLike<number>): number {
  if (weights.length !== fit.terms.length) {
    throw new RangeError(`the fit has ${fit.terms.length} terms; got values for ${weights.length}`);
  }
  return fit.terms.reduce((sum, { estimate }, term) => sum + estimate * (weights[term] as number), 0);
}

/** w′(X′X)⁻¹w as the squared length of R⁻ᵀw, which cannot fall below 0. */
function squaredReach(fit: RegressionFit, weights: ArrayLike<number>): number {
  const size = fit.terms.length;
  let sum = 0;
  for (let column = 0; column < size; column += 1) {
    let part = 0;
    for (let row = 0; row <= column; row += 1) {
      part += (weights[row] as number) * (fit.inverseFactor[row * size + column] as number);
    }
    sum += part * part;
  }
  return sum;
}
