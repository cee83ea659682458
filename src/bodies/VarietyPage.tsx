import { useMemo } from "preact/hooks";
import { countedInWords } from "../findings/counted.ts";
import { besideSentence, dragSentence, notCountedLines } from "../findings/varieties/chanceSentences.ts";
import { chosenSentence } from "../findings/varieties/chosenSentence.ts";
import { toleranceSentence } from "../findings/varieties/toleranceSentence.ts";
import { varietyAnswer, varietyGrounds } from "../findings/varieties/varietyAnswer.ts";
import type { ReportWith } from "../report/report.ts";
import type { VarietyScore } from "../report/varietiesResult.ts";
import { varietyPath } from "../units/varietyPath.ts";
import { Answer } from "./Answer.tsx";
import { useBody, useFigureSettings } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { FilterBar } from "./FilterBar.tsx";
import { Fold } from "./Fold.tsx";
import { varietiesPage } from "./pageNames.ts";
import { Said } from "./Said.tsx";
import { LabEntry } from "./varieties/LabEntry.tsx";
import { LotsEntry } from "./varieties/LotsEntry.tsx";
import { QuartersEntry } from "./varieties/QuartersEntry.tsx";
import { SpreadEntry } from "./varieties/SpreadEntry.tsx";
import { varietyFigures } from "./varieties/varietyFigures.ts";

export interface VarietyPageProps {
  readonly report: ReportWith<"varieties">;
  readonly variety: string;
}

/** Measures that have a tolerance and no part in the score, folded. */
function NotCounted({ score }: { readonly score: VarietyScore }) {
  const lines = notCountedLines(score);
  if (lines.length === 0) return null;
  return (
    <Fold
      summary={`${countedInWords(lines.length, "measure")} ${lines.length === 1 ? "does" : "do"} not count in the score`}
      short
    >
      <ul class="lines">
        {lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    </Fold>
  );
}

/** One variety: its batches in order, its grain lots, where its spread comes from, and what laboratories found. */
export function VarietyPage({ report, variety }: VarietyPageProps) {
  const { hrefTo, view } = useBody();
  const settings = useFigureSettings();
  const result = report.varieties;
  const score = result.scores.find((one) => one.variety === variety);
  const detail = result.details.find((one) => one.variety === variety);
  const figures = useMemo(() => varietyFigures(score, detail, settings), [score, detail, settings]);
  return (
    <>
      <Answer
        page={`${varietiesPage.title}: ${variety}`}
        stage="none"
        answer={varietyAnswer(variety, score, detail)}
        grounds={[...varietyGrounds(score, detail), chosenSentence(view)]}
      />
      <nav class="beside" aria-label="All varieties">
        <a href={hrefTo(varietiesPage.path)}>← All varieties</a>
      </nav>
      <FilterBar report={report} page={varietyPath(variety)} />
      {figures.inOrder === null || score === undefined ? null : (
        <Entry id="in-order" title="Batch by batch">
          <p>
            <Said sentence={dragSentence(score)} /> <Said sentence={besideSentence(score)} />
          </p>
          <Figure spec={figures.inOrder} />
          <NotCounted score={score} />
          <p class="small">
            <Said sentence={toleranceSentence(result)} />
          </p>
        </Entry>
      )}
      {detail === undefined ? null : (
        <>
          <LotsEntry detail={detail} figure={figures.lots} others={figures.otherLots} />
          <SpreadEntry detail={detail} figure={figures.betweenLots} />
          <QuartersEntry detail={detail} />
          <LabEntry lab={detail.lab} figures={figures.lab} />
        </>
      )}
    </>
  );
}
