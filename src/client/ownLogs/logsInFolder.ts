import { isLitter } from "../../tables/fileOf.ts";
import type { ChosenFile } from "./chosenFile.ts";
import { logsRoot } from "./logsRoot.ts";
import { streamed } from "./streamed.ts";
import { isArchive, type SizedLog, unpackArchive } from "./unpackArchive.ts";

interface LogsInFolder {
  /** The folder that the logs lie in, as it was chosen, with its closing slash. */
  readonly root: string;
  /** By their paths from there on; of two at the same place the one chosen last. */
  readonly logs: readonly SizedLog[];
}

/** True of a file that may hold a table, by its name. */
export const isTextLog = (path: string): boolean => /\.(csv|tsv|txt)$/i.test(path);

async function sizedLogs(chosen: readonly ChosenFile[]): Promise<readonly SizedLog[]> {
  const found: SizedLog[] = [];
  for (const file of chosen) {
    if (isArchive(file.path)) found.push(...(await unpackArchive(file)));
    else found.push({ path: file.path, bytes: file.blob.size, chunks: () => streamed(file.blob.stream()) });
  }
  return found;
}

/**
 * What a reader chose as it lies in the folder of the logs: archives opened, folders about it taken off, litter left out.
 *
 * @throws {RefusedLogs} on an archive that cannot be opened
 */
export async function logsInFolder(chosen: readonly ChosenFile[]): Promise<LogsInFolder> {
  const given = (await sizedLogs(chosen)).filter(({ path }) => !isLitter(path));
  const root = logsRoot(given.map(({ path }) => path));
  const byPath = new Map<string, SizedLog>();
  for (const log of given) {
    const path = log.path.startsWith(root) ? log.path.slice(root.length) : log.path;
    byPath.set(path, { ...log, path });
  }
  return { root, logs: [...byPath.values()] };
}
