import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { batchesInOrderFigure } from "../../figures/varieties/batchesInOrderFigure.ts";
import { betweenLotsFigure } from "../../figures/varieties/betweenLotsFigure.ts";
import { lotsFigure } from "../../figures/varieties/lotsFigure.ts";
import { type MethodGroup, methodGroups, methodName } from "../../findings/varieties/labSentences.ts";
import type { VarietyDetail, VarietyScore } from "../../report/varietiesResult.ts";
import { labMeasured, lotsOfMeasures, ownMeasured } from "./measuredBatches.ts";

/** The figures of one variety's page; what the logs cannot carry is null. This file alone declares them. */
export interface VarietyFigures {
  readonly inOrder: FigureSpec | null;
  /** Lots by the measures that matter most, and by all others. */
  readonly lots: FigureSpec | null;
  readonly otherLots: FigureSpec | null;
  readonly betweenLots: FigureSpec | null;
  /** One a set of methods, which are never mixed on one drawing. */
  readonly lab: readonly { readonly group: MethodGroup; readonly figure: FigureSpec | null }[];
}

export function varietyFigures(
  score: VarietyScore | undefined,
  detail: VarietyDetail | undefined,
  settings: FigureSettings,
): VarietyFigures {
  const lots = lotsOfMeasures(score, detail);
  return {
    inOrder:
      score === undefined
        ? null
        : batchesInOrderFigure(ownMeasured(score), settings, {
            id: "batches-in-order",
            title: "Batches in order, against what is accepted",
            dated: "unloaded",
          }),
    lots: lotsFigure(lots.first, settings, { id: "lots", title: "Grain lots side by side" }),
    otherLots: lotsFigure(lots.others, settings, { id: "other-lots", title: "Grain lots by the other measures" }),
    betweenLots: betweenLotsFigure(detail?.splits ?? [], settings),
    lab: methodGroups(detail?.lab ?? []).map((group, i) => ({
      group,
      figure: batchesInOrderFigure(labMeasured(group, score), settings, {
        id: `lab-${i + 1}`,
        title: `Laboratory results by ${methodName(group)}`,
        dated: "tested",
      }),
    })),
  };
}
