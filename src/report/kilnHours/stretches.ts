import { unusualStretch } from "../../analysis/unusualStretch.ts";
import type { HoursAnalysis, Stretch } from "../kilnHoursResult.ts";

/** Loads together slower or faster than the best model expects, in time order: neither weather nor bed explains them. */
export function stretchesOf({ best, dryingAir, humidityDepth }: HoursAnalysis): readonly Stretch[] {
  const model = best === "drying-air" ? dryingAir : humidityDepth;
  if (model === null) return [];
  const { loads, fit } = model;
  const residuals = loads.map((load) => load.residualHours);
  return unusualStretch(residuals, fit.residualStandardDeviation).map(({ start, end, mean }) => {
    const part = loads.slice(start, end + 1);
    return {
      loads: part.map((load) => load.load),
      from: part[0]?.loadedAt ?? Number.NaN,
      to: part.at(-1)?.loadedAt ?? Number.NaN,
      meanResidualHours: mean,
    };
  });
}
