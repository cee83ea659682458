import { runAnswer } from "../findings/runsAnswer.ts";
import type { RunPageResult } from "../report/runPageResult.ts";
import { runPath } from "../units/runPath.ts";
import { Answer } from "./Answer.tsx";
import { SteepCautions } from "./Cautions.tsx";
import { useBody, useFigureSettings, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { ProblemList } from "./logs/ProblemList.tsx";
import { runsPage } from "./pageNames.ts";
import { KernelsCounted } from "./runs/KernelsCounted.tsx";
import { germinationFacts, grainFacts, kilnFacts, maltFacts, steepFacts } from "./runs/runFacts.ts";
import { runFigures } from "./runs/runFigures.ts";
import { StageFacts } from "./runs/StageFacts.tsx";

/** One batch from grain to malt: its stages on one time line, its kiln curve, its numbers and what is wrong with them. */
export function RunPage({ result }: { readonly result: RunPageResult }) {
  const { house, hrefTo } = useBody();
  const units = useUnits();
  const { run, problems, otherColumns, previousRun, nextRun } = result;
  const reader = { units, timeZone: house.timeZone };
  const { timeline, curves } = runFigures(result, useFigureSettings());
  const drawn = curves.map((spec) => <Figure spec={spec} />);
  return (
    <>
      <Answer page={runsPage.title} stage="none" answer={[`${run.run}: `, ...runAnswer(result, units)]} grounds={[]} />
      <nav class="beside" aria-label="Other batches">
        {previousRun === null ? <span /> : <a href={hrefTo(runPath(previousRun))}>{`← ${previousRun}`}</a>}
        {nextRun === null ? null : <a href={hrefTo(runPath(nextRun))}>{`${nextRun} →`}</a>}
      </nav>
      {timeline === null && curves.length === 0 ? null : (
        <Entry id="on-its-way" title="On its way">
          {timeline === null ? null : <Figure spec={timeline} />}
          {curves.length > 1 ? <div class="pair">{drawn}</div> : drawn}
        </Entry>
      )}
      <Entry id="numbers" title="Stage by stage">
        <div class="facts-columns">
          <StageFacts stage="none" title="Grain" facts={grainFacts(run, reader)} />
          <StageFacts stage="steep" title="Steep" facts={steepFacts(run, reader)} />
          <StageFacts stage="germination" title="Germination" facts={germinationFacts(run, reader)} />
          <StageFacts stage="kiln" title="Kiln" facts={kilnFacts(result, reader)} />
          <StageFacts stage="none" title="Malt" facts={maltFacts(run, result.loss, reader)} />
        </div>
      </Entry>
      <KernelsCounted counted={result.counted} />
      {run.notes === null ? null : (
        <Entry id="notes" title="Notes">
          <p>{run.notes}</p>
        </Entry>
      )}
      {problems.length === 0 ? null : (
        <Entry id="problems" title="Faults in its logs">
          <ProblemList problems={problems} withFile />
        </Entry>
      )}
      {otherColumns.length === 0 ? null : (
        <Entry id="other" title="Also logged" note="Columns of your own, kept as they stand.">
          <dl class="facts">
            {otherColumns.map(({ table, column, value }) => (
              <div>
                <dt>{`${column} (${table})`}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </Entry>
      )}
      <SteepCautions />
    </>
  );
}
