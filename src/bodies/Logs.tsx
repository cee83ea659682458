import { counted } from "../findings/counted.ts";
import { logsAnswer, logsGrounds } from "../findings/logsAnswer.ts";
import type { Report } from "../report/report.ts";
import type { Problem } from "../tables/problem.ts";
import { Answer } from "./Answer.tsx";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { Fold } from "./Fold.tsx";
import { FilesRead } from "./logs/FilesRead.tsx";
import { logsFigures } from "./logs/logsFigures.ts";
import { ProblemList } from "./logs/ProblemList.tsx";
import { logsPage } from "./pageNames.ts";

/** Problems of one file are listed up to here; above, the first are listed and all are counted. */
const MOST_A_FILE = 100;

/** Problems file by file, in the order of the files: what took something away before what was only noted. */
export function problemsByFile(problems: readonly Problem[]): readonly (readonly [string, readonly Problem[]])[] {
  const files = new Map<string, Problem[]>();
  for (const problem of problems) files.set(problem.file, [...(files.get(problem.file) ?? []), problem]);
  const weight = ({ effect }: Problem): number => (effect === "note" ? 1 : 0);
  return [...files].map(([file, held]) => [file, held.toSorted((a, b) => weight(a) - weight(b))] as const);
}

/** Are my logs fit to be read? What is missing or impossible? */
export function Logs({ report }: { readonly report: Report }) {
  const { logs, runs } = report;
  const files = problemsByFile(logs.problems);
  const figures = logsFigures(logs);
  return (
    <>
      <Answer
        page={logsPage.title}
        stage="none"
        answer={logsAnswer(logs, runs.length)}
        grounds={[logs.files.length === 0 ? [] : logsGrounds(logs)]}
      />
      {files.length === 0 ? null : (
        <Entry
          id="to-mend"
          title="To mend"
          note="Mend the file where it stands, then read the logs again. Nothing is changed for you."
        >
          {files.map(([file, problems], i) => (
            <section>
              <h3>{`${file}: ${counted(problems.length, "place")}`}</h3>
              {i < 3 || problems.length <= 5 ? (
                <ProblemList problems={problems.slice(0, MOST_A_FILE)} />
              ) : (
                <Fold summary="Show them">
                  <ProblemList problems={problems.slice(0, MOST_A_FILE)} />
                </Fold>
              )}
              {problems.length > MOST_A_FILE ? (
                <p class="table-note">{`The first ${MOST_A_FILE} of ${counted(problems.length, "place")}.`}</p>
              ) : null}
            </section>
          ))}
        </Entry>
      )}
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
    </>
  );
}
