import type { FigureSpec } from "../../figures/figureSpec.ts";
import { coarseMeterSentence, residualsSentence } from "../../findings/assumptionSentences.ts";
import { measureTitle } from "../../findings/chartWords.ts";
import { withinChanceSentence, withinSentence } from "../../findings/withinSentence.ts";
import { lackingSentence } from "../../findings/yieldMoistureAnswer.ts";
import type { ControlChart } from "../../report/controlChartResult.ts";

import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";
import { Assumptions } from "./Assumptions.tsx";
import { Limits } from "./Limits.tsx";
import { SignalList } from "./SignalList.tsx";
import type { MeasureFigures } from "./yieldMoistureFigures.ts";

/** Uneven batches are linked up to here, the latest. */
const MOST_UNEVEN = 12;
const EVERY_BATCH = "#every-batch";

/** How even the beds are: told beside the chart, since it is another fault with another cure. */
function Within({ chart, figure }: { readonly chart: ControlChart; readonly figure: FigureSpec | null }) {
  const uneven = chart.within?.unevenRuns ?? [];
  if (chart.within === null) return null;
  return (
    <>
      {figure === null ? null : <Figure spec={figure} numbersIn={EVERY_BATCH} />}
      <section class="prose">
        <p>
          <Said sentence={withinSentence(chart)} /> <Said sentence={withinChanceSentence(chart)} />
        </p>
        {uneven.length === 0 ? null : (
          <p class="small">
            {uneven.length > MOST_UNEVEN ? `The latest ${MOST_UNEVEN}: ` : "Uneven: "}
            <RunLinks runs={uneven.slice(-MOST_UNEVEN)} />.
          </p>
        )}
      </section>
    </>
  );
}

/** The address of a measure's entry. */
export const measureId = ({ measure }: ControlChart): string => measure.replaceAll("_", "-");

/** One measure: its chart, what it signals, how even the beds are, where the limits come from, and what an expert asks. */
export function MeasureEntry({ chart, figures }: { readonly chart: ControlChart; readonly figures: MeasureFigures }) {
  const title = measureTitle[chart.measure];
  const id = measureId(chart);
  if (chart.tooLittle !== null) {
    return (
      <Entry id={id} title={title}>
        <p class="refusal">{chart.tooLittle}</p>
        <p class="small">
          <Said sentence={lackingSentence(chart)} />
        </p>
      </Entry>
    );
  }
  const warnings = [coarseMeterSentence(chart), residualsSentence(chart)].filter(({ length }) => length > 0);
  return (
    <Entry id={id} title={title}>
      {figures.chart === null ? null : <Figure spec={figures.chart} numbersIn={EVERY_BATCH} />}
      {warnings.map((sentence) => (
        <p>
          <Said sentence={sentence} />
        </p>
      ))}
      <SignalList chart={chart} />
      {figures.weightedMean === null ? null : <Figure spec={figures.weightedMean} numbersIn={EVERY_BATCH} />}
      <Within chart={chart} figure={figures.within} />
      <Limits chart={chart} />
      {figures.movingRanges === null && figures.cumulativeSums === null ? null : (
        <Fold summary="Sums of what lies off the centre, and steps from batch to batch">
          {figures.cumulativeSums === null ? null : <Figure spec={figures.cumulativeSums} numbersIn={EVERY_BATCH} />}
          {figures.movingRanges === null ? null : (
            <div class="pair">
              <Figure spec={figures.movingRanges} numbersIn={EVERY_BATCH} />
            </div>
          )}
        </Fold>
      )}
      <Assumptions chart={chart} normalPlot={figures.normalPlot} />
      {chart.lacking.length === 0 ? null : (
        <p class="small">
          <Said sentence={lackingSentence(chart)} />
        </p>
      )}
    </Entry>
  );
}
