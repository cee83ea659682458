import type { Database } from "../engine/database.ts";
import { type LoggedRows, lastLogged } from "./loggedRows.ts";
import type { ReportRows } from "./report.ts";
import type { RowFilter } from "./rowFilter.ts";
import { whereRows } from "./whereRows.ts";

/** Which rows a view chooses, as ascending places among all runs and all loads. */
export interface ChosenRows {
  readonly runs: readonly number[];
  readonly loads: readonly number[];
  /** How many there are in all, so that places are never read against other logs. */
  readonly of: { readonly runs: number; readonly loads: number };
}

function placesOf(names: readonly string[], chosen: ReadonlySet<string>): readonly number[] {
  return names.flatMap((name, place) => (chosen.has(name) ? [place] : []));
}

/** Asks the engine, in one query, which rows the filter lets through. A variety lets through the loads of nothing else. */
export async function chooseRows(database: Database, logged: LoggedRows, filter: RowFilter): Promise<ChosenRows> {
  const found = await database.query<{ name: string; isRun: boolean }>(
    `SELECT run AS name, true AS "isRun" FROM run_rows ${whereRows(filter, "sorted_at")}
    UNION ALL SELECT load, false FROM load_rows ${whereRows(filter, "loaded_at")}`,
  );
  const chosen = { runs: new Set<string>(), loads: new Set<string>() };
  for (const { name, isRun } of found) chosen[isRun ? "runs" : "loads"].add(name);
  return {
    runs: placesOf(
      logged.runs.map(({ run }) => run),
      chosen.runs,
    ),
    loads: placesOf(
      logged.loads.map(({ load }) => load),
      chosen.loads,
    ),
    of: { runs: logged.runs.length, loads: logged.loads.length },
  };
}

function picked<Row>(rows: readonly Row[], places: readonly number[]): readonly Row[] {
  return places.map((place) => rows[place] as Row);
}

/**
 * The rows of a view from those of the whole.
 *
 * @throws {RangeError} when the places were counted in other logs than `whole`
 */
export function viewRows(whole: ReportRows, chosen: ChosenRows): ReportRows {
  const { of } = chosen;
  if (of.runs !== whole.runs.length || of.loads !== whole.loads.length) {
    throw new RangeError(
      `the page stands on ${whole.runs.length} runs and ${whole.loads.length} loads, the tables on ${of.runs} and ${of.loads}`,
    );
  }
  const runs = picked(whole.runs, chosen.runs);
  const loads = picked(whole.loads, chosen.loads);
  return { ...whole, runs, loads, lastLoggedAt: lastLogged(loads, runs) };
}
