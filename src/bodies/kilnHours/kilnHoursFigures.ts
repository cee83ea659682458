import { addedVariableFigure } from "../../figures/addedVariableFigure.ts";
import { energyFigure } from "../../figures/energyFigure.ts";
import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { fittedAgainstActual } from "../../figures/fittedAgainstActual.ts";
import { residualsInTime } from "../../figures/residualsInTime.ts";
import { whatIfInterval } from "../../figures/whatIfInterval.ts";
import { bestModel } from "../../findings/bestModel.ts";
import { startOf, toTenMinutes } from "../../findings/whatIfSentence.ts";
import type { ReportRows, ReportWith } from "../../report/report.ts";
import type { WhatIfAnswer } from "../../report/whatIfAnswer.ts";

/** The figures that follow the rows shown; what the logs cannot carry is null. This file alone declares the page's figures. */
export interface KilnHoursFigures {
  readonly residuals: FigureSpec | null;
  readonly humidity: FigureSpec | null;
  readonly depth: FigureSpec | null;
  readonly fitted: FigureSpec | null;
  readonly energy: FigureSpec | null;
}

/** What was logged about the kiln in the time that the loads cover. */
function kilnEvents({ events, loads }: ReportRows): readonly { readonly on: number; readonly what: string }[] {
  const first = loads[0]?.loadedAt ?? 0;
  const last = loads.at(-1)?.loadedAt ?? 0;
  return events.filter(
    ({ on, kind, scope }) =>
      (scope === "kiln" || scope === "thermostat") && kind !== "new-baseline" && on >= first && on <= last,
  );
}

export function kilnHoursFigures(report: ReportWith<"kilnHours">, settings: FigureSettings): KilnHoursFigures {
  const { kilnHours, energy } = report.kilnHours;
  const { humidityDepth: model } = kilnHours;
  const stretches = kilnHours.stretches ?? [];
  const best = bestModel(kilnHours);
  const runsOf = new Map(report.loads.map(({ load, runs }) => [load, runs]));
  return {
    residuals: best === null ? null : residualsInTime(best, settings, { stretches, events: kilnEvents(report) }),
    humidity: model === null ? null : addedVariableFigure(model, "relativeHumidityPercent", settings, stretches),
    depth: model === null ? null : addedVariableFigure(model, "bedDepthMetres", settings, stretches),
    fitted: best === null ? null : fittedAgainstActual(best, settings, stretches),
    energy:
      energy === null || energy.loads.length === 0
        ? null
        : energyFigure(energy, settings, (load) => runsOf.get(load) ?? [load]),
  };
}

/**
 * The one figure that follows every key. Drawn from the times as they are said; the wanted finish, which the drawing works
 * back to, stays exact.
 */
export function tonightFigure(answer: WhatIfAnswer): FigureSpec | null {
  if (answer.kind === "refusal") return null;
  return whatIfInterval({ ...toTenMinutes(answer), latestStart: answer.latestStart }, startOf(answer));
}
