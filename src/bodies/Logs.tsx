import { logsAnswer, logsGrounds } from "../findings/logsAnswer.ts";
import type { ReportRows } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { FilesRead } from "./logs/FilesRead.tsx";
import { FromNothing } from "./logs/FromNothing.tsx";
import { logsFigures } from "./logs/logsFigures.ts";
import { Problems } from "./logs/Problems.tsx";
import { TakeAway, type TakenFile } from "./logs/TakeAway.tsx";
import { logsPage } from "./pageNames.ts";

/** Are my logs fit to be read? What is missing or impossible? */
export function Logs({ report, taken }: { readonly report: ReportRows; readonly taken: readonly TakenFile[] }) {
  const { logs, runs } = report;
  const figures = logsFigures(logs);
  return (
    <>
      <Answer page={logsPage.title} stage="none" answer={logsAnswer(logs, runs.length)} grounds={[logsGrounds(logs)]} />
      <Problems problems={logs.problems} />
      {figures.length === 0 ? null : (
        <Entry id="coverage" title="Month by month">
          {figures.map((spec) => (
            <Figure spec={spec} />
          ))}
        </Entry>
      )}
      {logs.files.length === 0 ? null : (
        <Entry id="files" title="What was read">
          <FilesRead files={logs.files} />
        </Entry>
      )}
      {logs.files.length === 0 ? null : <TakeAway files={taken} />}
      <FromNothing />
    </>
  );
}
