import { viewRows } from "../report/chosenRows.ts";
import type { PartName, ReportParts } from "../report/report.ts";
import { unpackReport } from "../report/unpackReport.ts";
import { choosesRows, formatView, type View, wholeView } from "../report/view.ts";
import { type BuiltPieces, openBuiltPieces } from "./builtPieces.ts";
import { awaitsLater, isWorthDrawing, withLater } from "./laterFindings.ts";
import { holds, type LoadedReport } from "./loadedReport.ts";
import type { SitePlaces } from "./sitePlaces.ts";
import { type LoadProgress, openWorker } from "./workerCalls.ts";

/** Where the session gets its reports: the built one, or one made anew by the engine for other rows. */
export interface Reports {
  /**
   * The report of a view with the parts that a page needs; where something takes longer, first without and then again
   * with it. Asking anew ends what an earlier question still waits for.
   *
   * @throws {Error} with a plain message when the files or the engine cannot be had, or {@link cancel} was called
   */
  of(view: View, parts: readonly PartName[]): AsyncGenerator<LoadedReport, void>;
  cancel(): void;
  readonly engineIsUp: boolean;
}

/** Each holds some megabytes; a reader goes back to the last few. */
const MOST_KEPT = 6;

/** The rows and the fit that a view chooses, as a key: units, sorting and what-if do not change them. */
function rowsKey(view: View): string {
  const { from, to, variety, kiln, without, air, rules, month } = view;
  return formatView({ ...wholeView, from, to, variety, kiln, without, air, rules, month });
}

export function openReports(places: SitePlaces, onProgress: (progress: LoadProgress) => void): Reports {
  const built: BuiltPieces = openBuiltPieces(places);
  const worker = openWorker(places, onProgress);
  const kept = new Map<string, LoadedReport>();

  /** The same object for as long as nothing is added to it, so that what was drawn from it need not be drawn again. */
  const keep = (key: string, report: LoadedReport): LoadedReport => {
    kept.delete(key);
    kept.set(key, report);
    for (const oldest of kept.keys()) {
      if (kept.size <= MOST_KEPT) break;
      kept.delete(oldest);
    }
    return report;
  };

  return {
    async *of(view, parts) {
      if (!choosesRows(view)) {
        yield built.with(parts);
        return;
      }
      const key = rowsKey(view);
      const known = kept.get(key);
      if (known !== undefined && holds(known, parts)) {
        yield known;
        if (!awaitsLater(known, parts)) return;
      }
      const answer = worker.ask(view, parts);
      const [whole, { chosen, parts: packed }] = await Promise.all([built.with([]), answer.report]);
      const found = keep(key, {
        ...(known ?? viewRows(whole, chosen)),
        ...unpackReport<Partial<ReportParts>>(packed),
      });
      yield found;
      if (!awaitsLater(found, parts)) return;
      const later = await answer.later;
      const finished = keep(key, withLater(found, later));
      if (isWorthDrawing(later)) yield finished;
    },
    cancel: () => worker.end("cancelled"),
    get engineIsUp() {
      return worker.isReady;
    },
  };
}
