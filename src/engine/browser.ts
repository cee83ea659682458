import { AsyncDuckDB, PACKAGE_VERSION, VoidLogger } from "@duckdb/duckdb-wasm";
import type { LoadableDatabase } from "./database.ts";
import { engineFiles } from "./engineFiles.ts";
import { fetchEngine, type OnProgress } from "./fetchEngine.ts";
import { type EngineCalls, openDatabaseOver, queryConfig } from "./loadTables.ts";

export interface BrowserDatabaseOptions {
  /** Absolute address of the folder with the engine's files, on the site's own origin, with its closing slash. */
  readonly folder: string;
  readonly onProgress?: OnProgress;
  /** Aborting it stops the download or the start; a database that has opened is ended by `close`. */
  readonly signal?: AbortSignal;
}

const LONGEST_START_SECONDS = 20;

/** Answers only by failing: when the worker dies, when the start takes too long, when `signal` is aborted. */
interface Failure {
  readonly promise: Promise<never>;
  /** Ends the wait for the start; a worker that dies later still fails what is under way. */
  started(): void;
}

function failureOf(worker: Worker, signal: AbortSignal | undefined): Failure {
  const limit = `The engine did not start within ${LONGEST_START_SECONDS} seconds. Reload the page to try again.`;
  let started = (): void => {};
  const promise = new Promise<never>((_, reject) => {
    const clock = setTimeout(() => reject(new Error(limit)), LONGEST_START_SECONDS * 1000);
    const aborted = (): void => reject(signal?.reason);
    signal?.addEventListener("abort", aborted);
    worker.addEventListener("error", ({ message }) =>
      reject(new Error(`The engine failed: ${message || "no reason given"}.`)),
    );
    started = () => {
      clearTimeout(clock);
      signal?.removeEventListener("abort", aborted);
    };
  });
  promise.catch(() => {});
  return { promise, started };
}

async function fetchWorker(address: string, signal: AbortSignal | undefined): Promise<Blob> {
  const response = await fetch(address, signal ? { signal } : {});
  if (!response.ok) throw new Error(`The engine could not be fetched: ${address} answered ${response.status}.`);
  return new Blob([await response.text()], { type: "text/javascript" });
}

/**
 * Opens DuckDB in a worker of its own, in memory, empty and locked down: fetches the engine's two files, starts it, and
 * gives back the same interface as `openNodeDatabase`. Works on a page and inside a worker.
 *
 * @throws {Error} with a sentence for the reader when the engine cannot be fetched or does not start; the signal's reason
 *   when aborted
 */
export async function openBrowserDatabase(options: BrowserDatabaseOptions): Promise<LoadableDatabase> {
  const { folder, onProgress = () => {}, signal } = options;
  const files = engineFiles(PACKAGE_VERSION);
  signal?.throwIfAborted();
  const module = await fetchEngine(new URL(files.module, folder).href, onProgress, signal);
  const script = await fetchWorker(new URL(files.worker, folder).href, signal);
  const addresses = { module: URL.createObjectURL(module), script: URL.createObjectURL(script) };
  // From a `blob:` address: a page's policy in a meta element binds such a worker, while one loaded by its own address is
  // bound by nothing on hosts that cannot send headers.
  const worker = new Worker(addresses.script);
  const engine = new AsyncDuckDB(new VoidLogger(), worker);
  const failure = failureOf(worker, signal);
  const orFail = <T>(step: Promise<T>): Promise<T> => Promise.race([step, failure.promise]);
  try {
    await orFail(engine.instantiate(addresses.module));
    await orFail(engine.open({ query: queryConfig }));
    const connection = await orFail(engine.connect());
    const calls: EngineCalls = {
      query: (sql) => orFail(connection.query(sql)),
      registerFileBuffer: (name, bytes) => orFail(engine.registerFileBuffer(name, bytes)),
      dropFile: (name) => orFail(engine.dropFile(name)),
      connect: async () => {
        const own = await orFail(engine.connect());
        return {
          query: (sql) => orFail(own.query(sql)),
          prepare: (sql) => orFail(own.prepare(sql)),
          send: (sql) => orFail(own.send(sql)),
          cancelSent: () => own.cancelSent(),
          close: () => orFail(own.close()),
        };
      },
      // Only the end of the worker gives its memory back.
      close: () => engine.terminate(),
    };
    return await orFail(openDatabaseOver(calls, []));
  } catch (error) {
    await engine.terminate();
    throw error;
  } finally {
    failure.started();
    for (const address of Object.values(addresses)) URL.revokeObjectURL(address);
  }
}
