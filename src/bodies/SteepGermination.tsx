import { useMemo } from "preact/hooks";
import {
  steepGerminationAnswer,
  steepGerminationGrounds,
} from "../findings/steepGermination/steepGerminationAnswer.ts";
import { chitSentence } from "../findings/steepGermination/steepSentences.ts";
import { uptakeLeftSentence } from "../findings/steepGermination/uptakeSentences.ts";
import type { ReportWith } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { FloorCautions } from "./Cautions.tsx";
import { useFigureSettings, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { FilterBar } from "./FilterBar.tsx";
import { Later } from "./Later.tsx";
import { steepGerminationPage } from "./pageNames.ts";
import { Said } from "./Said.tsx";
import { Beds } from "./steepGermination/Beds.tsx";
import { FloorBatches } from "./steepGermination/FloorBatches.tsx";
import { FloorWorkedOut } from "./steepGermination/FloorWorkedOut.tsx";
import { HoursToTarget } from "./steepGermination/HoursToTarget.tsx";
import { steepGerminationFigures } from "./steepGermination/steepGerminationFigures.ts";
import { Timetable } from "./steepGermination/Timetable.tsx";

/** Does a fixed steep and germination timetable suit the weather we have? */
export function SteepGermination({ report }: { readonly report: ReportWith<"steepGermination"> }) {
  const units = useUnits();
  const settings = useFigureSettings();
  const result = report.steepGermination;
  const { uptake, chitted, steeps, acrospires } = result;
  const figures = useMemo(() => steepGerminationFigures(result, settings), [result, settings]);
  return (
    <>
      <Answer
        page={steepGerminationPage.title}
        stage="germination"
        answer={steepGerminationAnswer(result, units)}
        grounds={steepGerminationGrounds(result, units)}
      />
      <FilterBar report={report} page={steepGerminationPage.path} />
      <Timetable result={result} figures={figures} />
      {steeps.length === 0 ? null : (
        <Entry id="steep" title="Steep">
          {figures.steepOut === null ? null : <Figure spec={figures.steepOut} />}
          <p>
            <Said sentence={chitSentence(chitted)} />
          </p>
        </Entry>
      )}
      {steeps.length === 0 ? null : (
        <Entry id="uptake" title="Hours and water" note="What the grain takes up.">
          {uptake === null ? (
            <p>{result.uptakeTooLittle}</p>
          ) : (
            <>
              <div class="pair">
                {figures.uptakeHours === null ? null : <Figure spec={figures.uptakeHours} />}
                {figures.uptakeWater === null ? null : <Figure spec={figures.uptakeWater} />}
              </div>
              <HoursToTarget rows={uptake.hoursToTarget} />
              <p class="small">
                <Said sentence={uptakeLeftSentence(uptake)} />
              </p>
            </>
          )}
        </Entry>
      )}
      {figures.bias === null ? null : (
        <Entry id="bias" title="Meter against mass gain">
          <Figure spec={figures.bias} />
        </Entry>
      )}
      {acrospires.length === 0 ? (
        <Entry id="growth" title="Growth">
          <p>{result.acrospireTooLittle ?? "No acrospires were counted at unloading."}</p>
        </Entry>
      ) : (
        <Entry id="growth" title="Growth">
          {figures.shares === null ? null : <Figure spec={figures.shares} />}
          {figures.meanLength === null ? null : <Figure spec={figures.meanLength} />}
        </Entry>
      )}
      <Beds beds={result.beds} figure={figures.beds} />
      <FloorWorkedOut />
      <Later place="entry batches-behind">
        <FloorBatches result={result} />
      </Later>
      <FloorCautions />
    </>
  );
}
