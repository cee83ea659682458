import { counted } from "../findings/counted.ts";
import { logsAnswer, logsGrounds } from "../findings/logsAnswer.ts";
import type { ReportRows } from "../report/report.ts";
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

/** More notes than this stay folded on paper. */
const MOST_NOTES_PRINTED = 20;

/** Problems file by file, in the order they come. */
export function problemsByFile(problems: readonly Problem[]): readonly (readonly [string, readonly Problem[]])[] {
  const files = new Map<string, Problem[]>();
  for (const problem of problems) {
    const held = files.get(problem.file);
    if (held === undefined) files.set(problem.file, [problem]);
    else held.push(problem);
  }
  return [...files];
}

interface OfFileProps {
  readonly file: string;
  readonly problems: readonly Problem[];
  /** What one of them is called: a place to mend, a note. */
  readonly one: string;
}

/** One file's problems under its name, the first of them listed and all counted. */
function OfFile({ file, problems, one }: OfFileProps) {
  return (
    <section>
      <h3>{`${file}: ${counted(problems.length, one)}`}</h3>
      <ProblemList problems={problems.slice(0, MOST_A_FILE)} />
      {problems.length > MOST_A_FILE ? (
        <p class="table-note">{`The first ${MOST_A_FILE} of ${counted(problems.length, one)}.`}</p>
      ) : null}
    </section>
  );
}

/** Are my logs fit to be read? What is missing or impossible? */
export function Logs({ report }: { readonly report: ReportRows }) {
  const { logs, runs } = report;
  const isNote = ({ effect }: Problem): boolean => effect === "note";
  const noted = logs.problems.filter(isNote);
  const faults = problemsByFile(logs.problems.filter((problem) => !isNote(problem)));
  const figures = logsFigures(logs);
  return (
    <>
      <Answer page={logsPage.title} stage="none" answer={logsAnswer(logs, runs.length)} grounds={[logsGrounds(logs)]} />
      {faults.length === 0 ? null : (
        <Entry
          id="to-mend"
          title="To mend"
          note="Mend the file where it stands, then read the logs again. Nothing is changed for you."
        >
          {faults.map(([file, problems]) => (
            <OfFile file={file} problems={problems} one="place" />
          ))}
        </Entry>
      )}
      {noted.length === 0 ? null : (
        <Entry id="noted" title="Noted" note="Worth a look; nothing was taken away.">
          <Fold summary={counted(noted.length, "note")} short={noted.length <= MOST_NOTES_PRINTED}>
            {problemsByFile(noted).map(([file, problems]) => (
              <OfFile file={file} problems={problems} one="note" />
            ))}
          </Fold>
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
