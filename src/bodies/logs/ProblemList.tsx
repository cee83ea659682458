import type { Problem } from "../../tables/problem.ts";

const EFFECT: Readonly<Record<Problem["effect"], string>> = {
  "file-set-aside": "The file was not read.",
  "row-set-aside": "The row was set aside.",
  "value-blanked": "The value was left blank.",
  note: "",
};

interface ProblemListProps {
  readonly problems: readonly Problem[];
  /** Name the file with each, where the list is of more than one. */
  readonly withFile?: boolean;
}

/** Where a fault stands: `kilning.csv, line 14, ambient_rh_pct`. */
function placeOf({ file, line, column }: Problem, withFile: boolean): string {
  const parts = [withFile ? file : null, line === null ? "whole file" : `line ${line}`, column];
  return parts.filter((part) => part !== null).join(", ");
}

/** Faults with their place, what was found there, what became of it and how to mend it. */
export function ProblemList({ problems, withFile = false }: ProblemListProps) {
  return (
    <ul class="faults">
      {problems.map((problem) => (
        <li>
          <p class="fault-place">
            {placeOf(problem, withFile)}
            {problem.value === null ? null : (
              <>
                {" "}
                <q>{problem.value}</q>
              </>
            )}
          </p>
          <p>
            {problem.message} <span class="quiet">{`${problem.hint} ${EFFECT[problem.effect]}`}</span>
          </p>
        </li>
      ))}
    </ul>
  );
}
