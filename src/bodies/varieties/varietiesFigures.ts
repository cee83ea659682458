import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { chancesFigure } from "../../figures/varieties/chancesFigure.ts";
import { periodsFigure } from "../../figures/varieties/periodsFigure.ts";
import { reliabilityFigure } from "../../figures/varieties/reliabilityFigure.ts";
import { scoresFigure } from "../../figures/varieties/scoresFigure.ts";
import type { VarietiesResult } from "../../report/varietiesResult.ts";

/** The figures of the Varieties page; what the logs cannot carry is null. This file alone declares them. */
export interface VarietiesFigures {
  readonly scores: FigureSpec | null;
  readonly chances: FigureSpec | null;
  readonly periods: FigureSpec | null;
  readonly onTargetForetold: FigureSpec | null;
  readonly evenForetold: FigureSpec | null;
}

export function varietiesFigures(
  { scores, periods, backTest, backTestOfEven }: VarietiesResult,
  settings: FigureSettings,
): VarietiesFigures {
  return {
    scores: scoresFigure(scores),
    chances: chancesFigure(scores),
    periods: periodsFigure(periods, settings),
    onTargetForetold:
      backTest === null
        ? null
        : reliabilityFigure(backTest, { id: "on-target-foretold", title: "On target: did what was foretold come?" }),
    evenForetold:
      backTestOfEven === null
        ? null
        : reliabilityFigure(backTestOfEven, { id: "even-foretold", title: "Even: did what was foretold come?" }),
  };
}
