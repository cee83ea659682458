import { chiSquareUpperTail } from "./distributions.ts";
import type { PredictorColumn } from "./factorisation.ts";
import { factorise } from "./factorisation.ts";
import { isFitFault } from "./fitFault.ts";
import type { RegressionFit } from "./regressionFit.ts";
import { mean } from "./summary.ts";

/**
 * Whether the spread of the residuals changes with the predictors: n R² of the squared residuals regressed on the
 * predictors and a constant, against chi-square with one degree of freedom a predictor (Koenker 1981, Journal of
 * Econometrics 17, 107–112, the form that needs no normal residuals; from memory). A small p says that it does.
 * Squared residuals that do not vary give 0.
 */
export function breuschPagan(
  columns: readonly PredictorColumn[],
  residuals: ArrayLike<number>,
): RegressionFit["breuschPagan"] {
  const squared = Float64Array.from(residuals, (residual) => residual * residual);
  const withConstant = factorise(columns, true);
  // A predictor that does not vary is the constant already.
  const auxiliary = isFitFault(withConstant) ? factorise(columns, false) : withConstant;
  if (isFitFault(auxiliary))
    throw new RangeError(`breuschPagan requires a design that can be fitted; got ${auxiliary.kind}`);
  const degreesOfFreedom = auxiliary.parameters - 1;
  const centre = mean(squared);
  let total = 0;
  let explained = 0;
  const coefficients = auxiliary.solve(squared);
  const first = auxiliary === withConstant ? 1 : 0;
  squared.forEach((square, row) => {
    let fitted = first === 1 ? (coefficients[0] as number) : 0;
    columns.forEach(({ values }, at) => {
      fitted += (coefficients[at + first] as number) * (values[row] as number);
    });
    total += (square - centre) ** 2;
    explained += (fitted - centre) ** 2;
  });
  const statistic = total === 0 ? 0 : (squared.length * explained) / total;
  const p = degreesOfFreedom === 0 ? 1 : chiSquareUpperTail(statistic, degreesOfFreedom);
  return { statistic, degreesOfFreedom, p };
}
