import { viewRows } from "../report/chosenRows.ts";
import type { PublishedLogs } from "../report/publishedLogs.ts";
import type { PartName, ReportParts, ReportRows } from "../report/report.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import { unpackReport } from "../report/unpackReport.ts";
import { choosesRows, formatView, type View, wholeView } from "../report/view.ts";
import type { Ask } from "./askLogs/askCalls.ts";
import { type BuiltPieces, openBuiltPieces } from "./builtPieces.ts";
import { frameShown } from "./frameShown.ts";
import { keptCurves } from "./keptCurves.ts";
import { awaitsLater, isWorthDrawing, withLater } from "./laterFindings.ts";
import { holds, type LoadedReport } from "./loadedReport.ts";
import type { OpenRequest } from "./protocol.ts";
import type { SitePlaces } from "./sitePlaces.ts";
import { type LoadProgress, openWorker, type ReportWorker } from "./workerCalls.ts";

/**
 * The logs that a session shows, as the reports that can be had of them: those that the site was built from, or the reader's
 * own. The rest of the session does not know which.
 */
export interface Reports {
  /**
   * The report of a view with the parts that a page needs; where something takes longer, first without and then again
   * with it. Asking anew ends what an earlier question still waits for.
   *
   * @throws {Error} with a plain message when the files or the engine cannot be had, or {@link cancel} was called
   */
  of(view: View, parts: readonly PartName[]): AsyncGenerator<LoadedReport, void>;
  /** The readings of one load, by the name in its row. */
  curve(readingsFile: string): Promise<KilnCurve>;
  /** The text of a load's own file of readings, read for this once. */
  readings(readingsFile: string): Promise<string>;
  /** What is known of the logs besides their rows. */
  published(): Promise<PublishedLogs>;
  /** A question in SQL, over all of the logs whatever the view. */
  readonly ask: Ask;
  /** Gives up what is waited for. */
  cancel(): void;
  /** Does this view wait for the engine to start? */
  startsEngine(view: View): boolean;
}

/** The reader's own logs. */
export interface OwnReports extends Reports {
  /** All rows, once the logs have been read. @throws {Error} with a plain message when they could not be */
  readonly whole: Promise<ReportRows>;
  /** Ends the worker that holds them. */
  close(): void;
}

/** Each holds some megabytes; a reader goes back to the last few. */
const MOST_KEPT = 6;

/** The rows and the fit that a view chooses, as a key: units, sorting and what-if do not change them. */
function rowsKey(view: View): string {
  const { from, to, variety, kiln, without, air, rules, month } = view;
  return formatView({ ...wholeView, from, to, variety, kiln, without, air, rules, month });
}

/** Where the answers come from. */
interface Ground {
  readonly worker: ReportWorker;
  /** Rows of the view that chooses all. */
  whole(): Promise<ReportRows>;
  /** What needs no worker: the report as it was built. */
  readonly built: BuiltPieces | null;
}

/** Answers views, and keeps the last answers. */
function answering({ worker, whole, built }: Ground): Reports["of"] {
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

  return async function* of(view, parts) {
    if (built !== null && !choosesRows(view)) {
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
    const [all, { chosen, parts: packed }] = await Promise.all([whole(), answer.report]);
    const found = keep(key, {
      ...(known ?? viewRows(all, chosen)),
      ...unpackReport<Partial<ReportParts>>(packed),
    });
    yield found;
    // By now it has been drawn.
    void frameShown().then(answer.seen);
    if (!awaitsLater(found, parts)) return;
    const later = await answer.later;
    const finished = keep(key, withLater(found, later));
    if (isWorthDrawing(later)) yield finished;
  };
}

async function fetchText(address: string): Promise<string> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the readings could not be fetched (${response.status})`);
  return response.text();
}

/** The logs that the site was built from: the built report, or one made anew by the engine for other rows. */
export function openSiteReports(places: SitePlaces, onProgress: (progress: LoadProgress) => void): Reports {
  const built = openBuiltPieces(places);
  const { tables, published, engine } = places;
  const worker = openWorker({ kind: "open", tables, published, engine }, onProgress);
  return {
    of: answering({ worker, whole: () => built.with([]), built }),
    curve: keptCurves((file) => fetchText(tables + file)),
    readings: (file) => fetchText(tables + file),
    published: worker.published,
    ask: worker.askSql,
    cancel: () => worker.end("cancelled"),
    startsEngine: (view) => choosesRows(view) && !worker.isReady,
  };
}

/** Has the reader's own logs read by a worker of their own, which holds them and answers for them. */
export function openOwnReports(
  opening: Extract<OpenRequest, { kind: "open-own" }>,
  onProgress: (progress: LoadProgress) => void,
): OwnReports {
  const worker = openWorker(opening, onProgress);
  const whole = worker.opened().then((rows) => {
    if (rows === null) throw new RangeError("a worker that reads own logs answers with their rows");
    return rows;
  });
  whole.catch(() => {});
  return {
    of: answering({ worker, whole: () => whole, built: null }),
    curve: keptCurves(worker.readings),
    readings: worker.readings,
    published: worker.published,
    ask: worker.askSql,
    // The worker stays: reading the logs anew would take longer than what is given up.
    cancel: () => worker.drop("cancelled"),
    startsEngine: () => false,
    whole,
    close: () => worker.end("cancelled"),
  };
}
