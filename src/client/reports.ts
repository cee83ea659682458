import type { Report } from "../report/report.ts";
import { parseReport } from "../report/reportJson.ts";
import { choosesRows, formatView, type View, wholeView } from "../report/view.ts";
import type { WorkerAnswer, WorkerRequest } from "./protocol.ts";
import workerAddress from "./reportWorker.ts?worker&url";
import type { SitePlaces } from "./sitePlaces.ts";

export interface LoadProgress {
  readonly part: "engine" | "tables";
  readonly received: number;
  readonly total: number;
}

/** Where the session gets its reports: the built one, or one made anew by the engine for other rows. */
export interface Reports {
  /** @throws {Error} with a plain message when the files or the engine cannot be had, or {@link cancel} was called */
  of(view: View): Promise<Report>;
  cancel(): void;
  readonly engineIsUp: boolean;
}

/**
 * A page's policy binds a worker made from a blob, and not one loaded by its address; so the worker starts as a blob
 * that imports the real script.
 */
function startWorker(): Worker {
  const script = new URL(workerAddress, location.href).href;
  const blob = URL.createObjectURL(new Blob([`import ${JSON.stringify(script)};`], { type: "text/javascript" }));
  return new Worker(blob, { type: "module" });
}

/** The rows and the fit that a view chooses, as a key: units, sorting and what-if do not change them. */
function rowsKey(view: View): string {
  return formatView({
    ...wholeView,
    from: view.from,
    to: view.to,
    variety: view.variety,
    kiln: view.kiln,
    without: view.without,
    air: view.air,
    rules: view.rules,
  });
}

export function openReports(places: SitePlaces, onProgress: (progress: LoadProgress) => void): Reports {
  let built: Promise<Report> | null = null;
  let worker: Worker | null = null;
  let ready = false;
  let requests = 0;
  const waiting = new Map<number, { resolve: (report: Report) => void; reject: (error: Error) => void }>();
  const kept = new Map<string, Report>();

  const failAll = (message: string): void => {
    for (const { reject } of waiting.values()) reject(new Error(message));
    waiting.clear();
    worker?.terminate();
    worker = null;
    ready = false;
  };

  const receive = ({ data }: MessageEvent<WorkerAnswer>): void => {
    if (data.kind === "progress") onProgress(data);
    else if (data.kind === "ready") ready = true;
    else if (data.kind === "report") {
      waiting.get(data.request)?.resolve(data.report);
      waiting.delete(data.request);
    } else if (data.request === null) failAll(data.message);
    else {
      waiting.get(data.request)?.reject(new Error(data.message));
      waiting.delete(data.request);
    }
  };

  const ask = (view: View): Promise<Report> => {
    if (worker === null) {
      worker = startWorker();
      worker.onmessage = receive;
      worker.onerror = (event) => failAll(event.message || "the report worker could not be started");
      const { tables, published, engine } = places;
      worker.postMessage({ kind: "open", tables, published, engine } satisfies WorkerRequest);
    }
    requests += 1;
    const request = requests;
    worker.postMessage({ kind: "report", request, view } satisfies WorkerRequest);
    return new Promise((resolve, reject) => waiting.set(request, { resolve, reject }));
  };

  const fetchBuilt = async (): Promise<Report> => {
    const response = await fetch(`${places.tables}${places.report}`);
    if (!response.ok) throw new Error(`the report could not be fetched (${response.status})`);
    return parseReport<Report>(await response.text());
  };

  return {
    async of(view) {
      if (!choosesRows(view)) {
        built ??= fetchBuilt();
        return built.catch((error: unknown) => {
          built = null;
          throw error;
        });
      }
      const key = rowsKey(view);
      const known = kept.get(key);
      if (known) return known;
      const report = await ask(view);
      kept.set(key, report);
      return report;
    },
    cancel() {
      failAll("cancelled");
    },
    get engineIsUp() {
      return ready;
    },
  };
}
