import type { LogsResult } from "../report/logsResult.ts";
import { counted, listed } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

/** What became of the logs, in one sentence: what was read, and how much of it was set aside. */
export function logsAnswer(logs: LogsResult, runs: number): Sentence {
  if (logs.files.length === 0) return ["No logs were found."];
  const rows = logs.files.reduce((sum, file) => sum + file.rowsSetAside, 0);
  const values = logs.files.reduce((sum, file) => sum + file.valuesBlanked, 0);
  const unread = logs.problems.filter((problem) => problem.effect === "file-set-aside").length;
  const read = [strong(counted(runs, "batch", "batches")), ` read from ${counted(logs.files.length, "file")}`];
  const aside = [
    ...(unread > 0 ? [`${counted(unread, "file")} could not be read`] : []),
    ...(rows > 0 ? [`${counted(rows, "row")} ${rows === 1 ? "was" : "were"} set aside`] : []),
    ...(values > 0 ? [`${counted(values, "value")} ${values === 1 ? "was" : "were"} left blank`] : []),
  ];
  if (aside.length === 0) return [...read, "; nothing was set aside."];
  return [...read, `; ${listed(aside)}.`];
}

/** What the notes and faults ask of the reader. */
export function logsGrounds(logs: LogsResult): Sentence {
  if (logs.files.length === 0) return ["Start from the empty logs in data/templates."];
  const notes = logs.problems.filter((problem) => problem.effect === "note").length;
  const faults = logs.problems.length - notes;
  if (logs.problems.length === 0) return ["Every row and every value passed its checks."];
  return [
    "Nothing was repaired by guessing. ",
    faults > 0 ? "Each fault is listed with its file, line and column: mend it there and read the logs again." : "",
    notes > 0 ? `${faults > 0 ? " " : ""}${counted(notes, "note")} took nothing away.` : "",
  ];
}
