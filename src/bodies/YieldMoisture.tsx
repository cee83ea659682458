import { useMemo } from "preact/hooks";
import { costBasisSentence, moistureCostSentence } from "../findings/moistureCostSentence.ts";
import { yieldMoistureAnswer, yieldMoistureGrounds } from "../findings/yieldMoistureAnswer.ts";
import type { ReportWith } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { useBody, useFigureSettings, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { FilterBar } from "./FilterBar.tsx";
import { Later } from "./Later.tsx";
import { yieldMoisturePage } from "./pageNames.ts";
import { Said } from "./Said.tsx";
import { Balance } from "./yieldMoisture/Balance.tsx";
import { BatchesBehind } from "./yieldMoisture/BatchesBehind.tsx";
import { ChartChoices } from "./yieldMoisture/ChartChoices.tsx";
import { ChartsWorkedOut } from "./yieldMoisture/ChartsWorkedOut.tsx";
import { MeasureEntry, measureId } from "./yieldMoisture/MeasureEntry.tsx";
import { Spec } from "./yieldMoisture/Spec.tsx";
import { yieldMoistureFigures } from "./yieldMoisture/yieldMoistureFigures.ts";

/** Are yield and final moisture in control, and do they meet the spec? */
export function YieldMoisture({ report }: { readonly report: ReportWith<"yieldMoisture"> }) {
  const { house, view } = useBody();
  const units = useUnits();
  const settings = useFigureSettings();
  const result = report.yieldMoisture;
  const { charts, moistureCost, balance } = result;
  const { apart } = view;
  // What the rules cost comes later and is in no figure: the balance tells one set of rows and rules from another.
  const figures = useMemo(() => yieldMoistureFigures(report, settings, apart), [balance, settings, apart]);
  const able = charts.filter(({ tooLittle, runs }) => tooLittle === null && runs.length > 0);
  const varieties = new Set(able.flatMap(({ runs }) => runs.map(({ variety }) => variety)));
  return (
    <>
      <Answer
        page={yieldMoisturePage.title}
        stage="none"
        answer={yieldMoistureAnswer(result, house.timeZone)}
        grounds={yieldMoistureGrounds(result, house.timeZone)}
      />
      <FilterBar report={report} page={yieldMoisturePage.path} />
      <ChartChoices charts={able} several={varieties.size > 1} />
      {charts.map((chart, i) => {
        const drawn = figures.measures[i];
        return drawn === undefined || (chart.runs.length === 0 && chart.tooLittle === null) ? null : (
          <Later place={`entry ${measureId(chart)}`}>
            <MeasureEntry chart={chart} figures={drawn} />
          </Later>
        );
      })}
      <Later place="entry spec">
        <Spec charts={charts} figures={figures.measures} />
      </Later>
      {moistureCost === null ? null : (
        <Entry id="moisture-cost" title="What moisture costs">
          <p>
            <Said sentence={moistureCostSentence(moistureCost, units)} />
          </p>
          <p class="small">
            <Said sentence={costBasisSentence(moistureCost)} />
          </p>
        </Entry>
      )}
      <Later place="entry balance">
        <Balance rows={balance} figures={figures} />
      </Later>
      {able.length === 0 ? null : <ChartsWorkedOut />}
      <Later place="entry batches-behind">
        <BatchesBehind charts={charts} />
      </Later>
    </>
  );
}
