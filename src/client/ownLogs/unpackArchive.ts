import type { LogFile } from "../../tables/logFile.ts";
import { type ChosenFile, RefusedLogs } from "./chosenFile.ts";
import { crc32 } from "./crc32.ts";
import { streamed } from "./streamed.ts";
import { packedIn, readZipIndex, type ZipEntry } from "./zipIndex.ts";

/** A file to be read, and how much there is of it once it is unpacked. */
export interface SizedLog extends LogFile {
  readonly bytes: number;
}

const STORED = 0;
const DEFLATED = 8;

/** Bytes unpacked at once: deflating makes them a thousand times fewer at most, so that no piece grows beyond some megabytes. */
const PACKED_A_PIECE = 16 * 1024;

/** True of a zip archive by its name; what it holds is looked at when it is unpacked. */
export const isArchive = (path: string): boolean => /\.zip$/i.test(path);

/** What some systems put beside the files that were packed. */
const isBeside = (name: string): boolean => /(^|\/)(__MACOSX|\.DS_Store)(\/|$)/.test(name);

function inPieces(packed: Blob): ReadableStream<Uint8Array<ArrayBuffer>> {
  let at = 0;
  return new ReadableStream({
    async pull(to) {
      if (at >= packed.size) return to.close();
      const piece = await packed.slice(at, at + PACKED_A_PIECE).arrayBuffer();
      at += piece.byteLength;
      to.enqueue(new Uint8Array(piece));
    },
  });
}

/** A file's bytes, unpacked as they are asked for, never more of them than the index says, and the same that were packed. */
async function* unpacked(archive: ChosenFile, entry: ZipEntry): AsyncGenerator<Uint8Array> {
  const damaged = (): Error => new Error(`${archive.path} is damaged at ${entry.name}; pack it anew`);
  let bytes = 0;
  let sum = 0;
  try {
    const packed = await packedIn(archive.blob, entry);
    const plain = entry.method === STORED ? packed.stream() : inPieces(packed).pipeThrough(inflating());
    for await (const piece of streamed(plain)) {
      bytes += piece.length;
      if (bytes > entry.bytes) throw damaged();
      sum = crc32(piece, sum);
      yield piece;
    }
  } catch (error) {
    // The browser's own words say nothing that a reader could use.
    if (error instanceof TypeError || error instanceof RefusedLogs) throw damaged();
    throw error;
  }
  if (bytes !== entry.bytes || sum !== entry.crc32) throw damaged();
}

/** Its types allow pieces of shared memory, which a stream of a file never gives. */
const inflating = (): TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>> =>
  new DecompressionStream("deflate-raw") as TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>;

/**
 * The files inside a zip archive. Its index is read now; each file is unpacked by itself, piece by piece, when it is read.
 * Neither the archive nor a file of it is ever held whole.
 *
 * @throws {RefusedLogs} when it is no archive, is locked with a password or packed in an unusual way
 */
export async function unpackArchive(archive: ChosenFile): Promise<readonly SizedLog[]> {
  const { path, blob } = archive;
  const refused = (why: string): RefusedLogs =>
    new RefusedLogs(`${path} cannot be unpacked: ${why}. Unpack it on this computer and choose the files.`);
  let entries: readonly ZipEntry[];
  try {
    entries = (await readZipIndex(blob)).filter(({ name }) => !isBeside(name));
  } catch (error) {
    throw error instanceof RefusedLogs ? refused(error.message) : error;
  }
  if (entries.length === 0) throw new RefusedLogs(`${path} holds no files.`);
  const strange = entries.find(({ method }) => method !== STORED && method !== DEFLATED);
  if (strange !== undefined) throw refused(`${strange.name} is packed in a way that a browser does not know`);
  return entries.map((entry) => ({
    path: entry.name,
    bytes: entry.bytes,
    chunks: () => unpacked(archive, entry),
  }));
}
