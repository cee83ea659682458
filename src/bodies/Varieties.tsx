import { useMemo } from "preact/hooks";
import { chosenSentence } from "../findings/varieties/chosenSentence.ts";
import { varietiesAnswer, varietiesGrounds } from "../findings/varieties/varietiesAnswer.ts";
import type { ReportWith } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { useBody, useFigureSettings } from "./context.ts";
import { FilterBar } from "./FilterBar.tsx";
import { varietiesPage } from "./pageNames.ts";
import { BackTestEntry } from "./varieties/BackTestEntry.tsx";
import { ChancesEntry } from "./varieties/ChancesEntry.tsx";
import { PeriodsEntry } from "./varieties/PeriodsEntry.tsx";
import { ScoresEntry } from "./varieties/ScoresEntry.tsx";
import { varietiesFigures } from "./varieties/varietiesFigures.ts";

/** Which variety is uneven, and where does it start? */
export function Varieties({ report }: { readonly report: ReportWith<"varieties"> }) {
  const { view } = useBody();
  const settings = useFigureSettings();
  const result = report.varieties;
  const figures = useMemo(() => varietiesFigures(result, settings), [result, settings]);
  return (
    <>
      <Answer
        page={varietiesPage.title}
        stage="none"
        answer={varietiesAnswer(result)}
        grounds={[...varietiesGrounds(result), chosenSentence(view)]}
      />
      <FilterBar report={report} page={varietiesPage.path} />
      <ScoresEntry result={result} figure={figures.scores} />
      <ChancesEntry result={result} figure={figures.chances} />
      <PeriodsEntry periods={result.periods} figure={figures.periods} />
      {result.scores.length === 0 ? null : <BackTestEntry result={result} figures={figures} />}
    </>
  );
}
