import { useMemo } from "preact/hooks";
import { airSourceSentence } from "../findings/airSourceSentence.ts";
import { bestModel, dryingAirSentence, modelName } from "../findings/bestModel.ts";
import { energySentence } from "../findings/kilnEvidence.ts";
import {
  dryingHoursAnswer,
  kilnHoursAnswer,
  kilnHoursGrounds,
  kilnHoursKnown,
  stretchesSentence,
} from "../findings/kilnHoursAnswer.ts";
import type { ReportWith } from "../report/report.ts";
import type { AnswerWhatIf, WhatIfAnswer } from "../report/whatIfAnswer.ts";
import { Answer } from "./Answer.tsx";
import { KilnCautions } from "./Cautions.tsx";
import { useBody, useFigureSettings, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { FilterBar } from "./FilterBar.tsx";
import { Effects } from "./kilnHours/Effects.tsx";
import { Guesses } from "./kilnHours/Guesses.tsx";
import { kilnHoursFigures, tonightFigure } from "./kilnHours/kilnHoursFigures.ts";
import { LeftOut } from "./kilnHours/LeftOut.tsx";
import { LoadsBehind } from "./kilnHours/LoadsBehind.tsx";
import { ReadyReckoner } from "./kilnHours/ReadyReckoner.tsx";
import { Tonight } from "./kilnHours/Tonight.tsx";
import { UnderWayNow } from "./kilnHours/UnderWayNow.tsx";
import { WorkedOut } from "./kilnHours/WorkedOut.tsx";
import { Later } from "./Later.tsx";
import { kilnHoursPage } from "./pageNames.ts";
import { Said } from "./Said.tsx";

export interface KilnHoursProps {
  readonly report: ReportWith<"kilnHours">;
  /** What the what-if says of the reader's fields, or of the house's usual load where none is filled in. */
  readonly whatIf: WhatIfAnswer;
  /** The same question for any other load: fills the ready reckoner. */
  readonly answerWhatIf: AnswerWhatIf;
}

/** When will tonight's kiln be dry, with this air and this bed, and is it slower than it should be? */
export function KilnHours({ report, whatIf, answerWhatIf }: KilnHoursProps) {
  const { house } = useBody();
  const units = useUnits();
  const result = report.kilnHours;
  const { kilnHours, dryingHours, energy } = result;
  const settings = useFigureSettings();
  const figures = useMemo(() => kilnHoursFigures(report, settings), [report, settings]);
  const model = kilnHours.humidityDepth;
  const best = bestModel(kilnHours);
  // Without a model there is nothing to ask.
  const usual = best === null ? null : result.usual;
  return (
    <>
      <Answer
        page={kilnHoursPage.title}
        stage="kiln"
        answer={kilnHoursAnswer(result, units)}
        grounds={[kilnHoursGrounds(result, units), stretchesSentence(kilnHours.stretches ?? [], house.timeZone)]}
        behind={[kilnHoursKnown(result, units), dryingAirSentence(kilnHours), airSourceSentence(result)]}
      />
      <FilterBar report={report} page={kilnHoursPage.path} air={result} />
      <UnderWayNow loads={result.underWay} />
      <Tonight usual={usual} answer={whatIf} figure={tonightFigure(whatIf)} />
      {usual === null ? null : (
        <Later place="entry reckoner">
          <ReadyReckoner usual={usual} answer={answerWhatIf} />
        </Later>
      )}
      {best === null || figures.residuals === null ? null : (
        <Entry id="evidence" title="Load by load" note={`Expected: by ${modelName(best)}.`}>
          <Figure spec={figures.residuals} numbersIn="#every-load" />
          <div class="pair">
            {figures.humidity === null ? null : <Figure spec={figures.humidity} />}
            {figures.depth === null ? null : <Figure spec={figures.depth} />}
          </div>
        </Entry>
      )}
      {model === null ? null : (
        <Entry id="effects" title="What moves the hours">
          <Effects model={model} dryingAir={kilnHours.dryingAir} caption="Hours from loading to unloading" />
        </Entry>
      )}
      {figures.fitted === null ? null : (
        <Entry id="guesses" title="How good the guess is">
          <div class="pair">
            <Figure spec={figures.fitted} numbersIn="#every-load" />
            <div>
              <Guesses guesses={kilnHours.guesses} coverage={kilnHours.coverage} />
            </div>
          </div>
        </Entry>
      )}
      <Entry id="drying" title="Ready for the ramp">
        <p>
          <Said sentence={dryingHoursAnswer(result, units)} />
        </p>
        {dryingHours.humidityDepth === null ? null : (
          <Effects
            model={dryingHours.humidityDepth}
            dryingAir={dryingHours.dryingAir}
            caption="Hours from loading to the start of the cure"
          />
        )}
      </Entry>
      {energy === null ? null : (
        <Entry id="energy" title="Energy">
          <p>
            <Said sentence={energySentence(energy, units)} />
          </p>
          {figures.energy === null ? null : <Figure spec={figures.energy} />}
        </Entry>
      )}
      <LeftOut unfitted={result.unfitted} />
      <WorkedOut analysis={kilnHours} />
      {best === null ? null : (
        <Later place="entry loads-behind">
          <LoadsBehind model={best} />
        </Later>
      )}
      <KilnCautions />
    </>
  );
}
