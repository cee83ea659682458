import type { RegressionFit } from "../../analysis/regressionFit.ts";
import { printNumber, printPValue } from "../../units/print.ts";

/** One diagnostic: what it is called, its value, and what it is good for, in words. */
export interface Diagnostic {
  readonly term: string;
  readonly value: string;
  readonly why: string;
}

const number = (value: number, decimals: number): string =>
  Number.isFinite(value) ? printNumber(value, decimals) : "not defined";

function largest(values: Float64Array, names: readonly string[]): { value: number; name: string } {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (Math.abs(values[i] ?? 0) > Math.abs(values[at] ?? 0)) at = i;
  return { value: values[at] ?? Number.NaN, name: names[at] ?? "" };
}

/**
 * Everything an expert would ask of a fit, with what each number says.
 *
 * @param loadNames names of the fit's loads, in its order
 */
export function diagnosticsOf(fit: RegressionFit, loadNames: readonly string[]): readonly Diagnostic[] {
  const [between, within] = fit.fDegreesOfFreedom;
  const inflation = Math.max(...fit.terms.map((term) => term.varianceInflation ?? 1));
  const leverage = largest(fit.leverage, loadNames);
  const cook = largest(fit.cooksDistance, loadNames);
  const studentised = largest(fit.studentisedResiduals, loadNames);
  const lag = fit.lagOneAutocorrelation;
  const serial = fit.terms.filter((term) => term.serialStandardError !== null);
  return [
    {
      term: "R² and adjusted R²",
      value: `${number(fit.rSquared, 3)} and ${number(fit.adjustedRSquared, 3)}`,
      why: "The share of the spread in hours that the fit accounts for, without and with a charge for each predictor.",
    },
    {
      term: "Residual standard deviation",
      value: `${number(fit.residualStandardDeviation, 2)} h`,
      why: `What is left over for one load, on ${fit.degreesOfFreedom} degrees of freedom.`,
    },
    {
      term: "F",
      value: `${number(fit.f, 1)} on ${between} and ${within}; p ${printPValue(fit.fPValue)}`,
      why: "Whether the predictors together say more than the mean alone.",
    },
    {
      term: "Leave-one-out error (PRESS)",
      value: `${number(fit.leaveOneOutRootMeanSquare, 2)} h`,
      why: "Each load estimated from all the others, root mean square. Well above the residual standard deviation would mean that single loads steer the fit.",
    },
    {
      term: "Variance inflation, largest",
      value: number(inflation, 2),
      why: "How far the predictors move together: 1 is not at all. Above 5 or so their effects are hard to part (common practice).",
    },
    {
      term: "Leverage, largest",
      value: `${number(leverage.value, 3)} (${leverage.name})`,
      why: `How unusual a load's air and bed are; the mean is ${number(fit.terms.length / fit.observations, 3)}.`,
    },
    {
      term: "Cook’s distance, largest",
      value: `${number(cook.value, 3)} (${cook.name})`,
      why: "How far one load moves the whole fit; above 1 look at that load (common practice).",
    },
    {
      term: "Studentised residual, largest",
      value: `${number(studentised.value, 2)} (${studentised.name})`,
      why: "How far one load lies from what the others lead one to expect, in its own standard errors.",
    },
    {
      term: "Lag-1 autocorrelation of residuals",
      value: `${number(lag.estimate, 2)} (${number(lag.low, 2)} to ${number(lag.high, 2)})`,
      why: "Whether a slow load is followed by another. Where the interval keeps clear of 0 the plain intervals are too narrow.",
    },
    {
      term: "Durbin–Watson",
      value: number(fit.durbinWatson, 2),
      why: "The same question, the older way: 2 is no such pattern.",
    },
    {
      term: "Breusch–Pagan (Koenker)",
      value: `${number(fit.breuschPagan.statistic, 2)} on ${fit.breuschPagan.degreesOfFreedom}; p ${printPValue(fit.breuschPagan.p)}`,
      why: "Whether the scatter is even. A small p calls for the HC3 intervals.",
    },
    ...(serial.length === 0
      ? []
      : [
          {
            term: "Newey–West standard errors",
            value: serial
              .map(({ name, serialStandardError }) => `${name}: ${number(serialStandardError ?? Number.NaN, 4)}`)
              .join("; "),
            why: "Standard errors that allow for neighbouring loads being alike; shown since the lag-1 interval keeps clear of 0.",
          },
        ]),
  ];
}
