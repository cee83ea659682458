import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { acrospireSharesFigure } from "../../figures/steepGermination/acrospireSharesFigure.ts";
import { bedsFigure } from "../../figures/steepGermination/bedsFigure.ts";
import { biasFigure } from "../../figures/steepGermination/biasFigure.ts";
import { growthFigure, lengthByTemperatureFigure } from "../../figures/steepGermination/growthFigures.ts";
import { meanLengthFigure } from "../../figures/steepGermination/meanLengthFigure.ts";
import { steepOutFigure } from "../../figures/steepGermination/steepOutFigure.ts";
import { timetableFigure } from "../../figures/steepGermination/timetableFigure.ts";
import { uptakeHoursFigure, uptakeWaterFigure } from "../../figures/steepGermination/uptakeFigures.ts";
import { joinSentences, plainText, type Sentence } from "../../findings/sentence.ts";
import {
  countingErrorSentence,
  evennessSentence,
  lengthSentence,
  lengthStanding,
  overgrownSentence,
} from "../../findings/steepGermination/acrospireSentences.ts";
import { bedsSentence } from "../../findings/steepGermination/bedSentences.ts";
import { biasSentence, steepOutSaid } from "../../findings/steepGermination/steepSentences.ts";
import {
  growthSentence,
  lengthOnTemperatureSentence,
  timetableSentence,
} from "../../findings/steepGermination/timetableSentences.ts";
import { waterSentence, wetHourSentence } from "../../findings/steepGermination/uptakeSentences.ts";
import type { AcrospireRun, SteepGerminationResult } from "../../report/steepGerminationResult.ts";

/** The page's figures; what the logs cannot carry is null. This file alone declares them. */
export interface SteepGerminationFigures {
  readonly steepOut: FigureSpec | null;
  readonly bias: FigureSpec | null;
  readonly uptakeHours: FigureSpec | null;
  readonly uptakeWater: FigureSpec | null;
  readonly shares: FigureSpec | null;
  readonly meanLength: FigureSpec | null;
  readonly beds: FigureSpec | null;
  readonly growth: FigureSpec | null;
  readonly timetable: FigureSpec | null;
  readonly lengthByTemperature: FigureSpec | null;
}

/** Runs short or long beyond counting error. */
function outsideOf(runs: readonly AcrospireRun[]): ReadonlyMap<string, "short" | "long"> {
  return new Map(
    runs.flatMap((run) => {
      const standing = lengthStanding(run);
      return standing === "short" || standing === "long" ? [[run.run, standing] as const] : [];
    }),
  );
}

export function steepGerminationFigures(
  result: SteepGerminationResult,
  settings: FigureSettings,
): SteepGerminationFigures {
  const { steeps, bias, uptake, acrospires, beds, growth, lengthOnTemperature } = result;
  const { units } = settings;
  const said = (...sentences: readonly Sentence[]): string => plainText(joinSentences(sentences));
  const timetable = growth?.timetable ?? null;
  return {
    steepOut: steepOutFigure(steeps, said(steepOutSaid(steeps)), settings),
    bias: bias === null ? null : biasFigure(steeps, bias, said(biasSentence(bias)), settings),
    uptakeHours: uptake === null ? null : uptakeHoursFigure(uptake, said(wetHourSentence(uptake)), settings),
    uptakeWater: uptake === null ? null : uptakeWaterFigure(uptake, said(waterSentence(uptake, units)), settings),
    shares: acrospireSharesFigure(
      acrospires,
      said(evennessSentence(acrospires), overgrownSentence(acrospires)),
      settings,
    ),
    meanLength: meanLengthFigure(
      acrospires,
      outsideOf(acrospires),
      said(lengthSentence(acrospires), countingErrorSentence(acrospires)),
      settings,
    ),
    beds: bedsFigure(acrospires, beds, said(bedsSentence(beds, units)), settings),
    growth: growth === null ? null : growthFigure(growth, said(growthSentence(growth, units)), settings),
    timetable:
      timetable === null ? null : timetableFigure(timetable, said(timetableSentence(timetable, units)), settings),
    lengthByTemperature:
      lengthOnTemperature === null
        ? null
        : lengthByTemperatureFigure(
            lengthOnTemperature,
            acrospires,
            said(lengthOnTemperatureSentence(lengthOnTemperature, units)),
            settings,
          ),
  };
}
