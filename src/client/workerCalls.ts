import type { PartName } from "../report/report.ts";
import type { View } from "../report/view.ts";
import type { LaterFindings } from "./laterFindings.ts";
import type { WorkerAnswer, WorkerRequest } from "./protocol.ts";
import workerAddress from "./reportWorker.ts?worker&url";
import type { SitePlaces } from "./sitePlaces.ts";

export type LoadProgress = Pick<Extract<WorkerAnswer, { kind: "progress" }>, "part" | "received" | "total">;
type ReportAnswer = Extract<WorkerAnswer, { kind: "report" }>;

/** What the worker will say to one question, one after the other. Both fail once another question is asked. */
export interface WorkerReply {
  readonly report: Promise<ReportAnswer>;
  readonly later: Promise<LaterFindings>;
}

export interface ReportWorker {
  /** Starts the worker and its engine with the first question. */
  ask(view: View, parts: readonly PartName[]): WorkerReply;
  /** Ends the worker, and with this message whatever is waited for. */
  end(message: string): void;
  readonly isReady: boolean;
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

interface Awaited<T> {
  readonly promise: Promise<T>;
  readonly resolve: (value: T) => void;
  readonly reject: (error: Error) => void;
}

function awaited<T>(): Awaited<T> {
  let settle: Pick<Awaited<T>, "resolve" | "reject"> | undefined;
  const promise = new Promise<T>((resolve, reject) => {
    settle = { resolve, reject };
  });
  // Whoever asked may have gone on meanwhile.
  promise.catch(() => {});
  return { promise, ...(settle as Pick<Awaited<T>, "resolve" | "reject">) };
}

interface Waiting {
  readonly request: number;
  readonly report: Awaited<ReportAnswer>;
  readonly later: Awaited<LaterFindings>;
}

export function openWorker(places: SitePlaces, onProgress: (progress: LoadProgress) => void): ReportWorker {
  let worker: Worker | null = null;
  let ready = false;
  let requests = 0;
  let waiting: Waiting | null = null;

  const fail = (message: string): void => {
    for (const { reject } of waiting === null ? [] : [waiting.report, waiting.later]) reject(new Error(message));
    waiting = null;
  };

  const end = (message: string): void => {
    fail(message);
    worker?.terminate();
    worker = null;
    ready = false;
  };

  const receive = ({ data }: MessageEvent<WorkerAnswer>): void => {
    if (data.kind === "progress") onProgress(data);
    else if (data.kind === "ready") ready = true;
    else if (data.kind === "failed" && data.request === null) end(data.message);
    else if (data.request !== waiting?.request) return;
    else if (data.kind === "report") waiting.report.resolve(data);
    else if (data.kind === "later") waiting.later.resolve(data.later);
    else fail(data.message);
  };

  return {
    ask(view, parts) {
      fail("another question was asked");
      if (worker === null) {
        worker = startWorker();
        worker.onmessage = receive;
        worker.onerror = (event) => end(event.message || "the report worker could not be started");
        const { tables, published, engine } = places;
        worker.postMessage({ kind: "open", tables, published, engine } satisfies WorkerRequest);
      }
      requests += 1;
      const request = requests;
      waiting = { request, report: awaited(), later: awaited() };
      worker.postMessage({ kind: "report", request, view, parts } satisfies WorkerRequest);
      return { report: waiting.report.promise, later: waiting.later.promise };
    },
    end,
    get isReady() {
      return ready;
    },
  };
}
