import { Worker } from "node:worker_threads";

/**
 * Runs a script in a thread of its own and gives the first thing that it posts.
 *
 * @throws {Error} what the script threw, or when it ended without a word
 */
export function inThread<T>(script: URL, workerData: unknown): Promise<T> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(script, { workerData });
    worker.once("message", (answer: T) => {
      resolve(answer);
      void worker.terminate();
    });
    worker.once("error", reject);
    worker.once("exit", () => reject(new Error(`${script.pathname} ended without an answer`)));
  });
}
