import type { Interval, RegressionFit } from "../../analysis/regressionFit.ts";

/** A coefficient with its plain interval, said per `step` of its predictor rather than per one. */
export function scaledTerm(fit: RegressionFit, name: string, step: number): Interval {
  const term = fit.terms.find((candidate) => candidate.name === name);
  if (term === undefined) throw new RangeError(`the fit has no term named ${name}`);
  return { estimate: term.estimate * step, low: term.low * step, high: term.high * step };
}
