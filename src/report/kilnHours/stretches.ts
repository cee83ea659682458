import { allSteps } from "../../analysis/allSteps.ts";
import { searchStretches } from "../../analysis/unusualStretch.ts";
import type { HoursAnalysis, Stretch } from "../kilnHoursResult.ts";

/**
 * Looks for loads together slower or faster than the best model expects, in time order: neither weather nor bed explains
 * them. A few milliseconds a step, so that a worker can hear of a newer wish meanwhile.
 */
export function* findStretches({ best, dryingAir, humidityDepth }: HoursAnalysis): Generator<void, readonly Stretch[]> {
  const model = best === "drying-air" ? dryingAir : humidityDepth;
  if (model === null) return [];
  const { loads, fit } = model;
  const residuals = loads.map((load) => load.residualHours);
  const found = yield* searchStretches(residuals, fit.residualStandardDeviation);
  return found.map(({ start, end, mean }) => {
    const part = loads.slice(start, end + 1);
    return {
      loads: part.map((load) => load.load),
      from: part[0]?.loadedAt ?? Number.NaN,
      to: part.at(-1)?.loadedAt ?? Number.NaN,
      meanResidualHours: mean,
    };
  });
}

/** All steps of {@link findStretches} at once. */
export function stretchesOf(analysis: HoursAnalysis): readonly Stretch[] {
  return allSteps(findStretches(analysis));
}
