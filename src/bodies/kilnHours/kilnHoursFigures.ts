import { addedVariableFigure } from "../../figures/addedVariableFigure.ts";
import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { residualsInTime } from "../../figures/residualsInTime.ts";
import type { KilnHoursResult } from "../../report/kilnHoursResult.ts";

/** Every figure of the Kiln hours page; what the logs cannot carry is null. Nothing else declares a figure of it. */
export interface KilnHoursFigures {
  readonly residuals: FigureSpec | null;
  readonly humidity: FigureSpec | null;
  readonly depth: FigureSpec | null;
}

export function kilnHoursFigures(result: KilnHoursResult, settings: FigureSettings): KilnHoursFigures {
  const { humidityDepth, stretches } = result.kilnHours;
  if (humidityDepth === null) return { residuals: null, humidity: null, depth: null };
  return {
    residuals: residualsInTime(humidityDepth, settings, { stretches }),
    humidity: addedVariableFigure(humidityDepth, "relativeHumidityPercent", settings, stretches),
    depth: addedVariableFigure(humidityDepth, "bedDepthMetres", settings, stretches),
  };
}
