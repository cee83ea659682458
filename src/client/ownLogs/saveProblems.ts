import { problemRows } from "../../findings/problemRows.ts";
import { guardedCsv } from "../../tables/guardedCsv.ts";
import type { Problem } from "../../tables/problem.ts";

/** Hands the list of problems to the reader as a file. A byte order mark tells spreadsheets that it is UTF-8. */
export function saveProblems(problems: readonly Problem[]): void {
  const link = document.createElement("a");
  const address = URL.createObjectURL(
    new Blob(["\ufeff", guardedCsv(problemRows(problems))], { type: "text/csv;charset=utf-8" }),
  );
  link.href = address;
  link.download = "what-to-mend.csv";
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
