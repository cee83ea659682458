import { type UnzipFileInfo, unzipSync } from "fflate";
import type { LogFile } from "../../tables/logFile.ts";
import { type ChosenFile, RefusedLogs } from "./chosenFile.ts";

/** A file to be read, and how much there is of it once it is unpacked. */
export interface SizedLog extends LogFile {
  readonly bytes: number;
}

const BYTES_A_CHUNK = 256 * 1024;

/** True of a zip archive by its name; what it holds is looked at when it is unpacked. */
export const isArchive = (path: string): boolean => /\.zip$/i.test(path);

/** What some systems put beside the files that were packed. */
const isBeside = (name: string): boolean => /(^|\/)(__MACOSX|\.DS_Store)(\/|$)/.test(name);

/** Anything that the library says of an archive, as a sentence of ours. */
function opened<Result>(path: string, open: () => Result): Result {
  try {
    return open();
  } catch (error) {
    if (error instanceof RefusedLogs || !(error instanceof Error)) throw error;
    throw new RefusedLogs(
      `${path} cannot be unpacked (${error.message}). Unpack it on this computer and choose the files.`,
    );
  }
}

/**
 * The files inside a zip archive. Its index is read now; each file is unpacked by itself when it is read, and never to more
 * bytes than the index says.
 *
 * @throws {RefusedLogs} when it is no archive, is locked with a password or packed in an unusual way
 */
export async function unpackArchive({ path, blob }: ChosenFile): Promise<readonly SizedLog[]> {
  const packed = new Uint8Array(await blob.arrayBuffer());
  const entries: UnzipFileInfo[] = [];
  opened(path, () =>
    unzipSync(packed, {
      filter(entry) {
        if (!/[/\\]$/.test(entry.name) && !isBeside(entry.name)) entries.push(entry);
        return false;
      },
    }),
  );
  if (entries.length === 0) throw new RefusedLogs(`${path} holds no files.`);
  return entries.map(({ name, originalSize }) => ({
    path: name.replaceAll("\\", "/"),
    bytes: originalSize,
    async *chunks() {
      const found = opened(path, () => unzipSync(packed, { filter: (entry) => entry.name === name }));
      const bytes = found[name] ?? new Uint8Array(0);
      if (bytes.length !== originalSize) throw new RefusedLogs(`${path} is damaged at ${name}.`);
      for (let at = 0; at < bytes.length; at += BYTES_A_CHUNK) yield bytes.subarray(at, at + BYTES_A_CHUNK);
    },
  }));
}
