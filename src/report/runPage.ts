import type { Problem } from "../tables/problem.ts";
import type { FittedLoad, KilnHoursResult } from "./kilnHoursResult.ts";
import type { ReportRows, ReportWith } from "./report.ts";
import { runLoss } from "./runLoss.ts";
import type { KilnCurve, RunPageResult } from "./runPageResult.ts";
import type { RunRow } from "./runRow.ts";

/** The load as the best model saw it; null where no fit used it. */
function fittedLoad({ kilnHours }: KilnHoursResult, load: string | null): FittedLoad | null {
  const model = kilnHours.best === "drying-air" ? kilnHours.dryingAir : kilnHours.humidityDepth;
  return model?.loads.find((candidate) => candidate.load === load) ?? null;
}

/** Problems that name the run. */
const problemsOf = (report: ReportRows, run: string): readonly Problem[] =>
  report.logs.problems.filter((problem) => problem.run === run);

/**
 * What the page of one run says, from the report of all of them.
 *
 * @param curves the readings of its loads, by load; without an entry the page says that the logger has nothing
 */
export function runPage(
  report: ReportWith<"kilnHours" | "steepGermination">,
  row: RunRow,
  curves: ReadonlyMap<string, KilnCurve>,
): RunPageResult {
  const { runs, loads, kilnHours, steepGermination, otherColumns } = report;
  const at = runs.indexOf(row);
  return {
    run: row,
    loads: loads.filter((load) => load.runs.includes(row.run)),
    curves,
    expectedHours: fittedLoad(kilnHours, row.load)?.oneStepAhead ?? null,
    loss: runLoss(row),
    counted: steepGermination.acrospires.find(({ run }) => run === row.run) ?? null,
    problems: problemsOf(report, row.run),
    otherColumns: otherColumns.filter((column) => column.run === row.run),
    // The list stands latest first.
    previousRun: runs[at + 1]?.run ?? null,
    nextRun: at > 0 ? (runs[at - 1]?.run ?? null) : null,
  };
}
