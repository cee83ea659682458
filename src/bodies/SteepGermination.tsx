import { useMemo } from "preact/hooks";
import {
  steepGerminationAnswer,
  steepGerminationGrounds,
  steepGerminationKnown,
} from "../findings/steepGermination/steepGerminationAnswer.ts";
import type { ReportWith } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { FloorCautions } from "./Cautions.tsx";
import { useFigureSettings, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { FilterBar } from "./FilterBar.tsx";
import { Later } from "./Later.tsx";
import { steepGerminationPage } from "./pageNames.ts";
import { Beds } from "./steepGermination/Beds.tsx";
import { CountSizes } from "./steepGermination/CountSizes.tsx";
import { FloorBatches } from "./steepGermination/FloorBatches.tsx";
import { FloorWorkedOut } from "./steepGermination/FloorWorkedOut.tsx";
import { Steep } from "./steepGermination/Steep.tsx";
import { steepGerminationFigures } from "./steepGermination/steepGerminationFigures.ts";
import { Timetable } from "./steepGermination/Timetable.tsx";
import { Uptake } from "./steepGermination/Uptake.tsx";

/** The table that holds the numbers of the figures. */
const EVERY_BATCH = "#every-batch";

/** Does a fixed steep and germination timetable suit the weather we have? */
export function SteepGermination({ report }: { readonly report: ReportWith<"steepGermination"> }) {
  const units = useUnits();
  const settings = useFigureSettings();
  const result = report.steepGermination;
  const { acrospires } = result;
  const figures = useMemo(() => steepGerminationFigures(result, settings), [result, settings]);
  return (
    <>
      <Answer
        page={steepGerminationPage.title}
        stage="germination"
        answer={steepGerminationAnswer(result, units)}
        grounds={steepGerminationGrounds(result, units)}
        behind={steepGerminationKnown(result, units)}
      />
      <FilterBar report={report} page={steepGerminationPage.path} />
      <Timetable result={result} figures={figures} numbersIn={EVERY_BATCH} />
      <Steep result={result} figure={figures.steepOut} numbersIn={EVERY_BATCH} />
      <Uptake result={result} byHours={figures.uptakeHours} byWater={figures.uptakeWater} numbersIn={EVERY_BATCH} />
      {figures.bias === null ? null : (
        <Entry id="bias" title="Meter against mass gain">
          <Figure spec={figures.bias} numbersIn={EVERY_BATCH} />
        </Entry>
      )}
      <Entry id="growth" title="Growth">
        {acrospires.length === 0 ? (
          <p>{result.acrospireTooLittle ?? "No acrospires were counted at unloading."}</p>
        ) : null}
        {figures.shares === null ? null : <Figure spec={figures.shares} />}
        {figures.meanLength === null ? null : <Figure spec={figures.meanLength} numbersIn={EVERY_BATCH} />}
      </Entry>
      <Beds beds={result.beds} figure={figures.beds} />
      <CountSizes size={result.countSize} />
      <FloorWorkedOut />
      <Later place="entry batches-behind">
        <FloorBatches result={result} />
      </Later>
      <FloorCautions />
    </>
  );
}
