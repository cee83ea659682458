// One thing kept in this browser's own store, in a database of its own, so that nothing is left of it once it is forgotten.

const STORE = "kept";
const RECORD = "it";

/** Something that outlasts the page: anything that a browser can copy, files and folders included. */
export interface KeptRecord<T> {
  /** Keeps this in place of what was kept. @throws {Error} where the browser has no room, or keeps nothing */
  put(value: T): Promise<void>;
  /** Null where nothing is kept. @throws {Error} where the browser keeps nothing at all */
  get(): Promise<T | null>;
  forget(): Promise<void>;
}

function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** @param database its name; one record lies in it */
export function keptRecord<T>(database: string): KeptRecord<T> {
  const inStore = async <R>(
    opening: IDBOpenDBRequest,
    mode: IDBTransactionMode,
    work: (store: IDBObjectStore) => IDBRequest<R>,
  ): Promise<R> => {
    const opened = await answered(opening);
    try {
      const transaction = opened.transaction(STORE, mode);
      const done = new Promise<void>((resolve, reject) => {
        transaction.oncomplete = () => resolve();
        transaction.onabort = () => reject(transaction.error);
      });
      const result = await answered(work(transaction.objectStore(STORE)));
      await done;
      return result;
    } finally {
      opened.close();
    }
  };

  return {
    async put(value) {
      const opening = indexedDB.open(database, 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
      await inStore(opening, "readwrite", (store) => store.put(value, RECORD));
    },
    async get() {
      const opening = indexedDB.open(database, 1);
      let isNew = false;
      // Looking must not make a database.
      opening.onupgradeneeded = () => {
        isNew = true;
        opening.transaction?.abort();
      };
      try {
        return ((await inStore(opening, "readonly", (store) => store.get(RECORD))) as T | undefined) ?? null;
      } catch (error) {
        if (isNew) return null;
        throw error;
      }
    },
    async forget() {
      await answered(indexedDB.deleteDatabase(database));
    },
  };
}
