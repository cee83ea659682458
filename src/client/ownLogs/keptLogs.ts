import type { ChosenFile } from "./chosenFile.ts";
import { KEPT_MARK } from "./keptMark.ts";

// The reader's own logs in this browser's own store, only where they asked for it: the files as they were chosen, so that a
// later version of the site reads them by its own rules.

const STORE = "own-logs";
const DATABASE = "piecebook-own-logs";
const RECORD = "logs";

/** What is needed to read the logs again. */
export interface KeptLogs {
  readonly files: readonly ChosenFile[];
  /** Text of a house.toml for logs that bring none. */
  readonly house: string;
}

function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function inStore<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const opening = indexedDB.open(DATABASE, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
  const database = await answered(opening);
  try {
    const transaction = database.transaction(STORE, mode);
    const done = new Promise<void>((resolve, reject) => {
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error);
    });
    const result = await answered(work(transaction.objectStore(STORE)));
    await done;
    return result;
  } finally {
    database.close();
  }
}

/**
 * Keeps these logs and no others.
 *
 * @throws {Error} where the browser has no room for them, or keeps nothing
 */
export async function keepLogs(logs: KeptLogs): Promise<void> {
  await inStore("readwrite", (store) => store.put(logs, RECORD));
  localStorage.setItem(KEPT_MARK, "yes");
}

/** Takes them out of the browser. */
export async function forgetLogs(): Promise<void> {
  localStorage.removeItem(KEPT_MARK);
  await answered(indexedDB.deleteDatabase(DATABASE));
}

/** The logs that are kept; null where there are none. */
export async function keptLogs(): Promise<KeptLogs | null> {
  return ((await inStore("readonly", (store) => store.get(RECORD))) as KeptLogs | undefined) ?? null;
}
