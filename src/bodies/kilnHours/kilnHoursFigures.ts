import { addedVariableFigure } from "../../figures/addedVariableFigure.ts";
import { energyFigure } from "../../figures/energyFigure.ts";
import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { fittedAgainstActual } from "../../figures/fittedAgainstActual.ts";
import { residualsInTime } from "../../figures/residualsInTime.ts";
import { whatIfInterval } from "../../figures/whatIfInterval.ts";
import { bestModel } from "../../findings/bestModel.ts";
import { startOf, toTenMinutes } from "../../findings/whatIfSentence.ts";
import type { Report } from "../../report/report.ts";
import type { WhatIfAnswer } from "../../report/whatIfAnswer.ts";

/** Every figure of the Kiln hours page; what the logs cannot carry is null. Nothing else declares a figure of it. */
export interface KilnHoursFigures {
  readonly tonight: FigureSpec | null;
  readonly residuals: FigureSpec | null;
  readonly humidity: FigureSpec | null;
  readonly depth: FigureSpec | null;
  readonly fitted: FigureSpec | null;
  readonly energy: FigureSpec | null;
}

export function kilnHoursFigures(report: Report, whatIf: WhatIfAnswer, settings: FigureSettings): KilnHoursFigures {
  const { kilnHours, energy } = report.kilnHours;
  const { humidityDepth: model, stretches } = kilnHours;
  const best = bestModel(kilnHours);
  const runsOf = new Map(report.loads.map(({ load, runs }) => [load, runs]));
  return {
    tonight: whatIf.kind === "refusal" ? null : tonightFigure(whatIf),
    residuals: best === null ? null : residualsInTime(best, settings, { stretches }),
    humidity: model === null ? null : addedVariableFigure(model, "relativeHumidityPercent", settings, stretches),
    depth: model === null ? null : addedVariableFigure(model, "bedDepthMetres", settings, stretches),
    fitted: best === null ? null : fittedAgainstActual(best, settings, stretches),
    energy:
      energy === null || energy.loads.length === 0
        ? null
        : energyFigure(energy, settings, (load) => runsOf.get(load) ?? [load]),
  };
}

/** Drawn from the times as they are said; the wanted finish, which the drawing works back to, stays exact. */
function tonightFigure(answer: Extract<WhatIfAnswer, { kind: "estimate" }>): FigureSpec {
  return whatIfInterval({ ...toTenMinutes(answer), latestStart: answer.latestStart }, startOf(answer));
}
