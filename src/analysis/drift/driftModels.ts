import { fQuantile } from "../distributions.ts";
import { doesNotVary, factorise } from "../factorisation.ts";
import { type FitFault, isFitFault } from "../fitFault.ts";
import type { Interval } from "../regressionFit.ts";
import { type ChangeSums, changeSums } from "./changeSums.ts";
import { changeWidening } from "./changeWidening.ts";
import { type CreepFit, fitCreep } from "./creepFit.ts";
import { type DriftSeries, requireDriftSeries } from "./driftSeries.ts";
import { fewestLoads } from "./fewestLoads.ts";
import { fitStep, type StepFit } from "./stepFit.ts";

export type DriftModelName = "constant" | "step" | "creep";

/** One of the models on the scale on which they are compared; the least BIC wins. */
export interface ModelScore {
  readonly model: DriftModelName;
  /** What was fitted: level, covariates and spread; with a change also its size and its onset. */
  readonly parameters: number;
  readonly residualSquares: number;
  readonly bic: number;
}

/** Constant, one step and flat-then-rising line beside each other. */
export interface DriftModels {
  readonly observations: number;
  /** Of all intervals: 0.95 for 95 %. */
  readonly level: number;
  readonly constant: { readonly level: Interval; readonly residualSquares: number; readonly degreesOfFreedom: number };
  readonly step: StepFit | null;
  readonly creep: CreepFit | null;
  /** In order of BIC, the winner first. */
  readonly scores: readonly ModelScore[];
  readonly winner: DriftModelName;
  /** BIC of the second less that of the winner. */
  readonly margin: number;
  /**
   * The margin is 6 or more, "strong evidence" by Kass and Raftery (1995, Journal of the American Statistical Association
   * 90, 773–795; from memory). Where not, a page should name both. With 2, "positive evidence", a quarter of the
   * simulated creeps of 0.3 °C a month would clearly be steps a month after the alarm; with 6 it is 3 in 100.
   */
  readonly isClear: boolean;
  /** Residual standard deviation of the winner, of a load of mean weight. */
  readonly residualStandardDeviation: number;
  readonly sums: ChangeSums;
}

/** BIC by which a winner must lead to be clear. */
export const clearMargin = 6;
/** Scores this close are the same in another engine; the model with fewer parameters, then the step, goes first. */
const scoreTie = 1e-9;

/**
 * Fits a constant, one step and a flat-then-rising line by weighted least squares and compares them by BIC, n ln(2π RSS/n)
 * + n + k ln n. The onset counts as one parameter of k, though it is no ordinary one, because it is chosen from the loads: not
 * counted, a change would win among loads that only scatter, far too often. Counted so, the published comparison on
 * the Nile's flows is met (1318 against 1270). It still is a lenient price: of quiet stretches some in a hundred are
 * given a change (the power study counts them). So the models say what a change looks like once `driftAlarm` has raised one;
 * they raise none.
 *
 * @returns a fault, which `sayFitFault` says as a sentence, below eight loads (one more for each covariate), where all loads
 * have one day or one value, or where covariates follow from each other
 * @throws RangeError for a broken series, or a level outside 0 to 1
 */
export function fitDriftModels(series: DriftSeries, level = 0.95): DriftModels | FitFault {
  requireDriftSeries(series, "fitDriftModels");
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`fitDriftModels requires a level between 0 and 1; got ${level}`);
  }
  const observations = series.values.length;
  const covariates = series.covariates ?? [];
  const needed = fewestLoads + covariates.length;
  if (observations < needed) return { kind: "too-few", observations, needed };
  if (doesNotVary(series.days)) return { kind: "constant", column: "day", observations };
  if (doesNotVary(series.values)) return { kind: "constant-response", observations };
  if (covariates.length > 0) {
    const factorisation = factorise(covariates, true);
    if (isFitFault(factorisation)) return factorisation;
  }

  const sums = changeSums(series);
  const narrowStep = fitStep(sums, level);
  const step =
    narrowStep &&
    fitStep(sums, level, changeWidening(series, "step", narrowStep.onsetDay.estimate, narrowStep.variance));
  const narrowCreep = fitCreep(sums, level);
  const creep =
    narrowCreep &&
    fitCreep(sums, level, changeWidening(series, "creep", narrowCreep.onsetDay.estimate, narrowCreep.variance));
  const squares = Math.max(sums.totalSquares, sums.roundingSquares);
  const scores = [
    scoreOf(sums, "constant", squares),
    ...(step ? [scoreOf(sums, "step", step.residualSquares)] : []),
    ...(creep ? [scoreOf(sums, "creep", creep.residualSquares)] : []),
  ].sort((a, b) => (Math.abs(a.bic - b.bic) <= scoreTie ? 0 : a.bic - b.bic));
  const [first, second] = scores as [ModelScore, ModelScore | undefined];
  const degreesOfFreedom = observations - sums.levelParameters;
  const reach = Math.sqrt((fQuantile(level, 1, degreesOfFreedom) * squares) / degreesOfFreedom / sums.totalWeight);
  const margin = second ? second.bic - first.bic : Number.POSITIVE_INFINITY;
  const winnerDegrees = first.model === "constant" ? degreesOfFreedom : degreesOfFreedom - 2;
  return {
    observations,
    level,
    constant: {
      level: { estimate: sums.level, low: sums.level - reach, high: sums.level + reach },
      residualSquares: squares,
      degreesOfFreedom,
    },
    step,
    creep,
    scores,
    winner: first.model,
    margin,
    isClear: margin >= clearMargin,
    residualStandardDeviation: Math.sqrt(first.residualSquares / winnerDegrees),
    sums,
  };
}

/** BIC of a model less that of the winner; infinite where it could not be fitted. */
export function marginOf({ scores }: DriftModels, model: DriftModelName): number {
  const own = scores.find((score) => score.model === model);
  return own ? own.bic - (scores[0] as ModelScore).bic : Number.POSITIVE_INFINITY;
}

function scoreOf(sums: ChangeSums, model: DriftModelName, residualSquares: number): ModelScore {
  const { observations, levelParameters, logWeights } = sums;
  const parameters = levelParameters + 1 + (model === "constant" ? 0 : 2);
  const minusTwoLogLikelihood =
    observations * (Math.log((2 * Math.PI * residualSquares) / observations) + 1) - logWeights;
  return { model, parameters, residualSquares, bic: minusTwoLogLikelihood + parameters * Math.log(observations) };
}
