import type { FigureSpec } from "../../figures/figureSpec.ts";
import { distinctSentence, leanSentence, likenessSentence } from "../../findings/assumptionSentences.ts";
import { narrowerSentence } from "../../findings/withinSentence.ts";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";

/** What the limits take for granted, tested on these batches. */
export function Assumptions({
  chart,
  normalPlot,
}: {
  readonly chart: ControlChart;
  readonly normalPlot: FigureSpec | null;
}) {
  const { assumptions } = chart;
  if (assumptions === null) return null;
  const said = [
    likenessSentence(assumptions),
    leanSentence(assumptions),
    distinctSentence(assumptions),
    narrowerSentence(chart),
  ].filter((sentence) => sentence.length > 0);
  return (
    <Fold summary="What the limits take for granted">
      <div class="pair">
        <div class="prose">
          {said.map((sentence) => (
            <p>
              <Said sentence={sentence} />
            </p>
          ))}
        </div>
        {normalPlot === null ? null : <Figure spec={normalPlot} />}
      </div>
    </Fold>
  );
}
