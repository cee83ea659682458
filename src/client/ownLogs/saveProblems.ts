import { problemRows } from "../../findings/problemRows.ts";
import { guardedCsv } from "../../tables/guardedCsv.ts";
import type { Problem } from "../../tables/problem.ts";
import { saveFile } from "./saveFile.ts";

/** Hands the list of problems to the reader as a file. A byte order mark tells spreadsheets that it is UTF-8. */
export function saveProblems(problems: readonly Problem[]): void {
  saveFile(
    "what-to-mend.csv",
    new Blob(["\ufeff", guardedCsv(problemRows(problems))], { type: "text/csv;charset=utf-8" }),
  );
}
