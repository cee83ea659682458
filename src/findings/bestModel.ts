import type { DryingAirModel, HoursAnalysis, HumidityDepthModel } from "../report/kilnHoursResult.ts";
import { print } from "../units/print.ts";
import { type Sentence, strong } from "./sentence.ts";

/** The model that what-if, stretches and residuals rest on; null where the logs carry none. */
export function bestModel(analysis: HoursAnalysis): HumidityDepthModel | DryingAirModel | null {
  return analysis.best === "drying-air" ? analysis.dryingAir : analysis.humidityDepth;
}

/** How the best model is called in a sentence. */
export function modelName(model: HumidityDepthModel | DryingAirModel): string {
  return model.kind === "drying-air" ? "drying air and bed depth" : "humidity and bed depth";
}

/** Where the drying-air model answers what-if: why, and how much more it says. Empty where the plain one does. */
export function dryingAirSentence(analysis: HoursAnalysis): Sentence {
  const { dryingAir, best, guesses } = analysis;
  if (best !== "drying-air" || dryingAir === null) return [];
  const share = print(dryingAir.fit.rSquared * 100, "percent", "metric", { decimals: 0 });
  const left = print(dryingAir.fit.residualStandardDeviation, "hours", "metric", { decimals: 2 });
  const proven = guesses?.winner === "drying-air";
  return [
    "The drying power of the air, which counts its warmth and the water in the grain too, accounts for ",
    strong(share),
    ` and leaves ${left}; the estimates below use it`,
    proven ? ", since it has guessed best." : ", though it has not yet proved the better guess.",
  ];
}
