import type { Report } from "../report.ts";
import type { MonthReview } from "../reviewResult.ts";
import type { RunRow } from "../runRow.ts";
import type { Month } from "./months.ts";

/** Batches that came off the floor in a month and whose kiln row was set aside: they left the kiln, and are in no month. */
export function lostRuns(
  { runs, logs: { files, problems } }: Pick<Report, "runs" | "logs">,
  { from, before }: Pick<Month, "from" | "before">,
): readonly RunRow[] {
  const ofKiln = new Set(files.flatMap(({ path, table }) => (table === "kilning" ? [path] : [])));
  const setAside = new Set(
    problems.flatMap(({ effect, run, file }) =>
      effect === "row-set-aside" && run !== null && ofKiln.has(file) ? [run] : [],
    ),
  );
  return runs.filter(
    ({ run, unloadedAt, germinationEndedAt: ended }) =>
      unloadedAt === null && ended !== null && ended >= from && ended < before && setAside.has(run),
  );
}

/**
 * How complete a month's logs are: its own batches, those that came off the floor in it and have no readable row of their kiln,
 * and the files that could not be read at all, which every month lacks.
 */
export function logHealthOf(
  report: Pick<Report, "runs" | "logs">,
  monthRuns: readonly RunRow[],
  month: Pick<Month, "from" | "before">,
): MonthReview["logHealth"] {
  const { problems } = report.logs;
  const lost = lostRuns(report, month);
  const names = new Set([...monthRuns, ...lost].map(({ run }) => run));
  const own = problems.filter(({ run }) => run !== null && names.has(run));
  const of = (effect: string): number => own.filter((problem) => problem.effect === effect).length;
  const complete = monthRuns.filter(
    (run) => run.kilnHours !== null && run.finalMoisturePercent !== null && run.dryMatterYieldPercent !== null,
  );
  return {
    rowsSetAside: of("row-set-aside"),
    valuesBlanked: of("value-blanked"),
    notes: of("note"),
    runs: monthRuns.length,
    runsComplete: complete.length,
    runsLost: lost.map(({ run }) => run),
    filesSetAside: [
      ...new Set(problems.flatMap(({ effect, file }) => (effect === "file-set-aside" ? [file] : []))),
    ].sort(),
  };
}
