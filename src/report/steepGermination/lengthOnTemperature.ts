import { factoriseForFit } from "../../analysis/findFitFault.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import { linearCombination } from "../../analysis/predict.ts";
import type { AcrospireRun, SteepGerminationResult } from "../steepGerminationResult.ts";
import { evenSteps } from "./evenSteps.ts";
import { ofVarietiesWithTwo, withinVarieties } from "./withinVarieties.ts";

/** Fewer batches are not drawn a line through. */
const FEWEST_BATCHES = 12;

/**
 * Final length against mean bed temperature, within varieties: all that a fixed timetable with one count a batch can say.
 * It does not part warmth from hours. Null below {@link FEWEST_BATCHES} batches or where temperature did not vary.
 */
export function lengthOnTemperature(
  acrospires: readonly AcrospireRun[],
): SteepGerminationResult["lengthOnTemperature"] {
  const batches = ofVarietiesWithTwo(
    acrospires.flatMap(({ run, variety, bedMeanCelsius, meanLength }) =>
      variety === null || bedMeanCelsius === null
        ? []
        : [{ run, variety, celsius: bedMeanCelsius, length: meanLength.estimate }],
    ),
  );
  const within = withinVarieties(batches.map(({ variety }) => variety));
  const columns = [
    { name: "bedMeanCelsius", label: "bed temperature", values: batches.map(({ celsius }) => celsius) },
    ...within.columns,
  ];
  const lengths = batches.map(({ length }) => length);
  const factorisation = factoriseForFit(columns, lengths, FEWEST_BATCHES);
  if (isFitFault(factorisation)) return null;
  const fit = fitLeastSquares(columns, lengths, { factorisation });
  const slope = fit.terms[1];
  if (slope === undefined) return null;
  const { estimate, low, high } = slope;
  const celsius = batches.map((batch) => batch.celsius);
  return {
    batches: batches.length,
    perKelvin: { estimate, low, high },
    line: evenSteps(Math.min(...celsius), Math.max(...celsius), 13).map((at) => {
      const mean = linearCombination(fit, [1, at, ...within.mix]);
      return { celsius: at, length: mean.estimate, low: mean.low, high: mean.high };
    }),
  };
}
