import type { PublishedLogs } from "../report/publishedLogs.ts";
import type { ReportRows } from "../report/report.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import { choosesRows, type View } from "../report/view.ts";
import { type Answers, answering } from "./answering.ts";
import type { Ask } from "./askLogs/askCalls.ts";
import { openBuiltPieces } from "./builtPieces.ts";
import { keptCurves } from "./keptCurves.ts";
import type { OpenRequest } from "./protocol.ts";
import type { SitePlaces } from "./sitePlaces.ts";
import { type LoadProgress, openWorker } from "./workerCalls.ts";

/**
 * The logs that a session shows, as the reports that can be had of them: those that the site was built from, or the reader's
 * own. The rest of the session does not know which.
 */
export interface Reports {
  /** Asking anew ends what an earlier question still waits for. @throws {Error} also once {@link cancel} was called */
  readonly of: Answers;
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
