import { counted } from "../../findings/counted.ts";
import type { Problem } from "../../tables/problem.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { ProblemList } from "./ProblemList.tsx";

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

/** All that was found in the logs: what to mend, and what is only worth a look. Nothing where nothing was found. */
export function Problems({ problems }: { readonly problems: readonly Problem[] }) {
  const isNote = ({ effect }: Problem): boolean => effect === "note";
  const noted = problems.filter(isNote);
  const faults = problemsByFile(problems.filter((problem) => !isNote(problem)));
  return (
    <>
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
    </>
  );
}
