import { useEffect, useMemo, useState } from "preact/hooks";
import { mayWrite, openKeptFolder } from "./keptFolder.ts";
import { chooseFolder, type LogsFolder, readLogsFolder } from "./logsFolder.ts";

/** The folder that rows are added to: chosen, or kept from an earlier visit. */
export interface FolderInHand {
  readonly folder: LogsFolder | null;
  /** The name of one that is kept and that the browser has not let in yet; null where there is none. */
  readonly kept: string | null;
  /** Lets the reader choose one, which is kept then. */
  choose(): void;
  /** Opens the one that is kept; the browser may ask. */
  openKept(): void;
  /** Forgets the folder, and adds to it no longer. */
  forget(): void;
  /** The folder as it lies there after a row was added. */
  changed(folder: LogsFolder): void;
}

/**
 * @param root address of the site
 * @param say hears a sentence where something could not be done
 */
export function useLogsFolder(root: string, say: (sentence: string) => void): FolderInHand {
  const record = useMemo(() => openKeptFolder(root), [root]);
  const [folder, setFolder] = useState<LogsFolder | null>(null);
  const [kept, setKept] = useState<FileSystemDirectoryHandle | null>(null);

  const open = async (handle: FileSystemDirectoryHandle): Promise<void> => {
    setFolder(await readLogsFolder(handle));
    setKept(null);
  };

  // What was granted for good opens by itself; else the browser asks once the reader wants it.
  useEffect(() => {
    void (async () => {
      const handle = await record.get();
      if (handle === null) return;
      setKept(handle);
      if (await mayWrite(handle, false)) await open(handle);
    })().catch(() => {});
  }, [record]);

  const told = (work: Promise<void>): void =>
    void work.catch((error: unknown) => say(error instanceof Error ? error.message : String(error)));

  return {
    folder,
    kept: kept?.name ?? null,
    choose() {
      told(
        chooseFolder().then(async (handle) => {
          if (handle === null) return;
          await open(handle);
          // A browser that keeps nothing asks again next time.
          await record.put(handle).catch(() => {});
        }),
      );
    },
    openKept() {
      if (kept === null) return;
      const again = async (): Promise<void> => {
        if (!(await mayWrite(kept, true))) throw new Error(`The browser was not allowed to open ${kept.name}.`);
        await open(kept).catch(() => {
          throw new Error(`The folder ${kept.name} cannot be opened any more: it may have been moved or renamed.`);
        });
      };
      told(again());
    },
    forget() {
      setFolder(null);
      setKept(null);
      told(record.forget());
    },
    changed: setFolder,
  };
}
