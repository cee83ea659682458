import { studentTQuantile } from "../distributions.ts";
import type { PredictorColumn } from "../factorisation.ts";
import { factoriseForFit } from "../findFitFault.ts";
import { type FitFault, isFitFault } from "../fitFault.ts";
import { fitLeastSquares } from "../fitLeastSquares.ts";
import { automaticLags, neweyWest } from "../neweyWest.ts";
import type { Interval, RegressionTerm } from "../regressionFit.ts";
import { mean } from "../summary.ts";

/** An estimate with the errors that its interval was chosen from. */
export interface RobustEstimate extends Interval {
  /** Of plain least squares. */
  readonly standardError: number;
  readonly robustStandardError: number;
  /** Null where residuals of neighbours are not seen to be related. */
  readonly serialStandardError: number | null;
}

/** Before against after, beside whatever else moves the value. */
export interface StepEffect {
  /** Level on each side where every covariate stands at its mean over all rows. */
  readonly before: RobustEstimate;
  readonly after: RobustEstimate;
  /** After less before. */
  readonly step: RobustEstimate;
  /** Of the step among the covariates: how much of it they could also explain. */
  readonly varianceInflation: number;
  readonly degreesOfFreedom: number;
  readonly residualStandardDeviation: number;
  readonly lagOne: Interval;
  /** Each value less what the covariates explain of it, at their means: its mean on each side is that side's level. */
  readonly adjusted: Float64Array;
}

/**
 * Least squares of `response` on a step (0 before, 1 after) and covariates, rows in time order. Intervals by HC3, or by
 * Newey–West errors with the usual lags where the residuals' lag-1 interval excludes 0 and these are larger: such errors
 * come out too small in short series.
 *
 * @returns a fault, which `sayFitFault` says as a sentence, where the rows cannot carry the fit
 * @throws RangeError for lengths that differ or values that are not finite
 */
export function stepEffect(
  covariates: readonly PredictorColumn[],
  response: ArrayLike<number>,
  isAfter: readonly boolean[],
): StepEffect | FitFault {
  const centres = covariates.map(({ values }) => (values.length === 0 ? 0 : mean(values)));
  const columns = [
    ...covariates.map((column, at) => ({
      ...column,
      values: Float64Array.from(column.values, (value) => value - (centres[at] as number)),
    })),
    { name: "step", label: "date", values: Float64Array.from(isAfter, Number) },
  ];
  const factorisation = factoriseForFit(columns, response);
  if (isFitFault(factorisation)) return factorisation;
  const fit = fitLeastSquares(columns, response, { factorisation });
  const { terms, residuals, leverage, degreesOfFreedom, lagOneAutocorrelation: lagOne } = fit;
  const { parameters, influence } = factorisation;
  const [level, step] = [terms[0], terms.at(-1)] as [RegressionTerm, RegressionTerm];
  const reach = studentTQuantile(0.975, degreesOfFreedom);

  // How far a weighted sum of the coefficients moves for one unit of each row.
  const influenceOf = (weights: ArrayLike<number>): Float64Array =>
    residuals.map((_, row) => {
      let sum = 0;
      for (let term = 0; term < parameters; term += 1) {
        sum += (weights[term] as number) * (influence[row * parameters + term] as number);
      }
      return sum;
    });
  const related = lagOne.low > 0 || lagOne.high < 0;
  const adjustment = Math.sqrt((residuals.length - 1) / (residuals.length - parameters));
  const estimateOf = (estimate: number, weights: ArrayLike<number>): RobustEstimate => {
    const moves = influenceOf(weights);
    let [plain, robust] = [0, 0];
    moves.forEach((move, row) => {
      plain += move * move;
      robust += (move * ((residuals[row] as number) / (1 - (leverage[row] as number)))) ** 2;
    });
    const robustStandardError = Math.sqrt(robust);
    // One column of influence: `neweyWest` then counts one parameter, where the fit spent more.
    const [alone = 0] = related ? neweyWest(moves, residuals, 1, automaticLags(residuals.length)) : [];
    const serialStandardError = related ? alone * adjustment : null;
    const half = reach * Math.max(robustStandardError, serialStandardError ?? 0);
    return {
      estimate,
      low: estimate - half,
      high: estimate + half,
      standardError: fit.residualStandardDeviation * Math.sqrt(plain),
      robustStandardError,
      serialStandardError,
    };
  };
  const weights = (first: number, last: number): Float64Array =>
    new Float64Array(parameters).map((_, term) => (term === 0 ? first : term === parameters - 1 ? last : 0));
  return {
    before: estimateOf(level.estimate, weights(1, 0)),
    after: estimateOf(level.estimate + step.estimate, weights(1, 1)),
    step: estimateOf(step.estimate, weights(0, 1)),
    varianceInflation: step.varianceInflation ?? 1,
    degreesOfFreedom,
    residualStandardDeviation: fit.residualStandardDeviation,
    lagOne,
    adjusted: residuals.map((residual, row) => residual + level.estimate + (isAfter[row] ? step.estimate : 0)),
  };
}
