import type { PublishedLogs } from "../report/publishedLogs.ts";
import type { PartName, ReportRows } from "../report/report.ts";
import type { View } from "../report/view.ts";
import { type AskCalls, openAskCalls } from "./askLogs/askCalls.ts";
import type { LaterFindings } from "./laterFindings.ts";
import type { OpenRequest, WorkerAnswer, WorkerRequest } from "./protocol.ts";
import workerAddress from "./reportWorker.ts?worker&url";

export type LoadProgress = Extract<WorkerAnswer, { kind: "progress" }>;
type ReportAnswer = Extract<WorkerAnswer, { kind: "report" }>;
export type Foreseen = Extract<WorkerAnswer, { kind: "foreseen" }>;

/** What the worker will say to one question, one after the other. Both fail once another question is asked. */
export interface WorkerReply {
  readonly report: Promise<ReportAnswer>;
  readonly later: Promise<LaterFindings>;
  /** Says that the report has been shown, after which the worker goes on to what comes later. */
  seen(): void;
}

export interface ReportWorker {
  /** Starts the worker and its engine where nothing did before. */
  ask(view: View, parts: readonly PartName[]): WorkerReply;
  /** Has views answered that nobody has asked for yet, until anything is asked. A guess that cannot be answered says nothing. */
  foresee(views: readonly View[], parts: readonly PartName[], keep: (foreseen: Foreseen) => void): void;
  /** Starts the worker and waits until its logs are in the engine; they are the answer where they are the reader's own. */
  opened(): Promise<ReportRows | null>;
  /** What is known of the logs besides their rows. */
  published(): Promise<PublishedLogs>;
  /** The readings of one load of the reader's own logs. */
  readings(file: string): Promise<string>;
  /** Asks these logs in SQL. */
  readonly askSql: AskCalls["ask"];
  /** Ends with this message whatever question is waited for; the worker stays. */
  drop(message: string): void;
  /** Ends the worker too. */
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

export function openWorker(opening: OpenRequest, onProgress: (progress: LoadProgress) => void): ReportWorker {
  let worker: Worker | null = null;
  let ready: Awaited<ReportRows | null> = awaited();
  let published: Awaited<PublishedLogs> | null = null;
  let isReady = false;
  let requests = 0;
  let waiting: Waiting | null = null;
  let keepForeseen: (foreseen: Foreseen) => void = () => {};
  const readings = new Map<string, Awaited<string>>();

  const drop = (message: string): void => {
    for (const { reject } of waiting === null ? [] : [waiting.report, waiting.later]) reject(new Error(message));
    waiting = null;
  };

  const end = (message: string): void => {
    drop(message);
    ready.reject(new Error(message));
    published?.reject(new Error(message));
    published = null;
    asks.end(message);
    for (const { reject } of readings.values()) reject(new Error(message));
    readings.clear();
    worker?.terminate();
    worker = null;
    ready = awaited();
    isReady = false;
  };

  const receiveReadings = ({ file, csv }: Extract<WorkerAnswer, { kind: "readings" }>): void => {
    const asked = readings.get(file);
    readings.delete(file);
    if (csv === null) asked?.reject(new Error("the readings of this load are not there"));
    else csv.text().then(asked?.resolve, asked?.reject);
  };

  const receive = ({ data }: MessageEvent<WorkerAnswer>): void => {
    if (data.kind === "progress") onProgress(data);
    else if (data.kind === "ready") {
      isReady = true;
      ready.resolve(data.rows);
    } else if (data.kind === "asked" || data.kind === "ask-failed") asks.receive(data);
    else if (data.kind === "published") published?.resolve(data.published);
    else if (data.kind === "readings") receiveReadings(data);
    else if (data.kind === "foreseen") keepForeseen(data);
    else if (data.kind === "failed" && data.request === null) end(data.message);
    else if (data.request !== waiting?.request) return;
    else if (data.kind === "report") waiting.report.resolve(data);
    else if (data.kind === "later") waiting.later.resolve(data.later);
    else drop(data.message);
  };

  const started = (): Worker => {
    if (worker !== null) return worker;
    worker = startWorker();
    worker.onmessage = receive;
    worker.onerror = (event) => end(event.message || "the report worker could not be started");
    worker.postMessage(opening satisfies WorkerRequest);
    return worker;
  };

  const asks = openAskCalls((request) => started().postMessage(request satisfies WorkerRequest));

  return {
    ask(view, parts) {
      drop("another question was asked");
      const asked = started();
      requests += 1;
      const request = requests;
      waiting = { request, report: awaited(), later: awaited() };
      asked.postMessage({ kind: "report", request, view, parts } satisfies WorkerRequest);
      return {
        report: waiting.report.promise,
        later: waiting.later.promise,
        seen: () => asked.postMessage({ kind: "seen", request } satisfies WorkerRequest),
      };
    },
    foresee(views, parts, keep) {
      drop("another question was asked");
      requests += 1;
      keepForeseen = keep;
      started().postMessage({ kind: "foresee", request: requests, views, parts } satisfies WorkerRequest);
    },
    opened() {
      started();
      return ready.promise;
    },
    published() {
      if (published === null) {
        published = awaited();
        started().postMessage({ kind: "published" } satisfies WorkerRequest);
      }
      return published.promise;
    },
    readings(file) {
      const known = readings.get(file) ?? awaited<string>();
      if (!readings.has(file)) {
        readings.set(file, known);
        started().postMessage({ kind: "readings", file } satisfies WorkerRequest);
      }
      return known.promise;
    },
    askSql: asks.ask,
    drop,
    end,
    get isReady() {
      return isReady;
    },
  };
}
