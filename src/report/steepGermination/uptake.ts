import { studentTQuantile, studentTTwoSidedP } from "../../analysis/distributions.ts";
import type { PredictorColumn } from "../../analysis/factorisation.ts";
import { factoriseForFit } from "../../analysis/findFitFault.ts";
import { type FitFault, isFitFault, sayFitFault } from "../../analysis/fitFault.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import { linearCombination } from "../../analysis/predict.ts";
import type { Interval, RegressionFit, RegressionTerm } from "../../analysis/regressionFit.ts";
import { median } from "../../analysis/summary.ts";
import type { SteepBias, SteepRun, UptakeModel } from "../steepGerminationResult.ts";
import { evenSteps } from "./evenSteps.ts";
import { hoursToTarget } from "./hoursToTarget.ts";
import type { UptakeBatch, UptakeFit } from "./uptakeFit.ts";
import { ofVarietiesWithTwo, withinVarieties } from "./withinVarieties.ts";

/** Fewer batches are not fitted. */
const FEWEST_BATCHES = 12;

const words = { observations: "batches", response: "steep-out moisture" };

/** One way of knowing the moisture throughout, the one that more batches have: the two differ, and never stand in one fit. */
export function uptakeBasis(steeps: readonly SteepRun[]): UptakeModel["basis"] {
  const measured = steeps.filter(({ measuredPercent }) => measuredPercent !== null).length;
  const gained = steeps.filter(({ fromMassGainPercent }) => fromMassGainPercent !== null).length;
  return gained > measured ? "from mass gain" : "measured";
}

function batchesOf(steeps: readonly SteepRun[], basis: UptakeModel["basis"]): readonly UptakeBatch[] {
  return ofVarietiesWithTwo(
    steeps.flatMap(({ run, variety, wetHours, waterCelsius, measuredPercent, fromMassGainPercent, target }) => {
      const percent = basis === "measured" ? measuredPercent : fromMassGainPercent;
      return variety === null || wetHours === null || percent === null
        ? []
        : [{ run, variety, wetHours, waterCelsius, percent, target }];
    }),
  );
}

/** With water temperature where most batches have it and it varies, else on wet hours alone. */
function fitUptake(all: readonly UptakeBatch[]): UptakeFit | FitFault {
  const warm = ofVarietiesWithTwo(all.filter(({ waterCelsius }) => waterCelsius !== null));
  if (warm.length >= all.length / 2) {
    const withWater = fitOn(warm, true);
    if (!isFitFault(withWater) || (withWater.kind === "constant" && withWater.column === "wetting time"))
      return withWater;
  }
  return fitOn(all, false);
}

function fitOn(batches: readonly UptakeBatch[], withWater: boolean): UptakeFit | FitFault {
  const within = withinVarieties(batches.map(({ variety }) => variety));
  const water = batches.map(({ waterCelsius }) => waterCelsius ?? 0);
  const columns: PredictorColumn[] = [
    { name: "wetHours", label: "wetting time", values: batches.map(({ wetHours }) => wetHours) },
    ...(withWater ? [{ name: "waterCelsius", label: "water temperature", values: water }] : []),
    ...within.columns,
  ];
  const percents = batches.map(({ percent }) => percent);
  const factorisation = factoriseForFit(columns, percents, FEWEST_BATCHES);
  if (isFitFault(factorisation)) return factorisation;
  const usualWater = withWater ? median(water) : null;
  return {
    fit: fitLeastSquares(columns, percents, { factorisation }),
    batches,
    within,
    usualWater,
    point: (variety, wetHours) => [1, wetHours, ...(usualWater === null ? [] : [usualWater]), ...within.at(variety)],
  };
}

/** Where neighbours resemble each other the plain interval is too narrow. */
function intervalOf(term: RegressionTerm, fit: RegressionFit): Interval {
  const { estimate, standardError, serialStandardError } = term;
  const reach =
    studentTQuantile(0.975, fit.degreesOfFreedom) * Math.max(standardError, serialStandardError ?? standardError);
  return { estimate, low: estimate - reach, high: estimate + reach };
}

/** Batches that the fit cannot account for: a studentised residual beyond chance, however many are looked at (Bonferroni). */
function unlikeTheRest({ fit, batches }: UptakeFit): readonly string[] {
  const { studentisedResiduals, degreesOfFreedom, observations } = fit;
  return batches.flatMap(({ run }, at) => {
    const p = studentTTwoSidedP(studentisedResiduals[at] as number, degreesOfFreedom - 1);
    return p * observations < 0.05 ? [run] : [];
  });
}

function linesOf({ fit, batches, within, usualWater, point }: UptakeFit): UptakeModel["lines"] {
  return within.varieties.map((variety) => {
    const hours = batches.filter((batch) => batch.variety === variety).map(({ wetHours }) => wetHours);
    const line = evenSteps(Math.min(...hours), Math.max(...hours), 9).map((wetHours) => {
      const mean = linearCombination(fit, point(variety, wetHours));
      return { wetHours, percent: mean.estimate, low: mean.low, high: mean.high };
    });
    return { variety, atCelsius: usualWater, line };
  });
}

/**
 * Steep-out moisture on wet hours and water temperature, each variety at a level of its own, by least squares; and the wet
 * hours that would have met each variety's target. Or why there is none, as a sentence.
 */
export function uptakeModel(steeps: readonly SteepRun[], bias: SteepBias | null): UptakeModel | string {
  const basis = uptakeBasis(steeps);
  const fitted = fitUptake(batchesOf(steeps, basis));
  if (isFitFault(fitted)) return sayFitFault(fitted, words);
  const { fit, batches } = fitted;
  const [, hours, water] = fit.terms;
  if (hours === undefined) throw new RangeError("the fit of uptake has no term for wet hours");
  const allowed = basis === "from mass gain" && bias?.clear ? bias.meanPoints.estimate : null;
  return {
    batches: batches.length,
    basis,
    pointsPerWetHour: intervalOf(hours, fit),
    pointsPerKelvin: fitted.usualWater !== null && water !== undefined ? intervalOf(water, fit) : null,
    residualPoints: fit.residualStandardDeviation,
    rSquared: fit.rSquared,
    unlikeTheRest: unlikeTheRest(fitted),
    allowedForBiasPoints: allowed,
    hoursToTarget: hoursToTarget(fitted, allowed ?? 0),
    points: batches.map(({ run, variety, wetHours, waterCelsius, percent }, at) => {
      return { run, variety, wetHours, waterCelsius, percent, fittedPercent: fit.fitted[at] as number };
    }),
    lines: linesOf(fitted),
  };
}
