import { Zip, ZipDeflate } from "fflate";
import { breathe } from "./breathe.ts";

/** Bytes that are packed at a time: some hundredths of a second on a slow phone. */
const BYTES_AT_A_TIME = 256 * 1024;

/** A file to be packed. */
export interface PackedPart {
  readonly path: string;
  readonly text: string;
}

/**
 * Packs files into a zip archive, one after the other as they come, so that no more than one is ever held as text. It runs on the
 * page's own thread, and lets the page draw and answer after every bit.
 *
 * @param signal ends it between two bits
 * @throws {unknown} what the files throw, or the signal's reason
 */
export async function zipFolder(parts: AsyncIterable<PackedPart>, signal: AbortSignal): Promise<Blob> {
  const packed: Blob[] = [];
  let pieces: Uint8Array<ArrayBuffer>[] = [];
  const encoder = new TextEncoder();
  const zip = new Zip((error, piece) => {
    if (error !== null) throw error;
    pieces.push(piece as Uint8Array<ArrayBuffer>);
  });
  // As blobs, which a browser may put on disk.
  const settle = (): void => {
    packed.push(new Blob(pieces));
    pieces = [];
  };
  for await (const { path, text } of parts) {
    signal.throwIfAborted();
    const file = new ZipDeflate(path);
    zip.add(file);
    const bytes = encoder.encode(text);
    for (let from = 0; from === 0 || from < bytes.length; from += BYTES_AT_A_TIME) {
      const to = from + BYTES_AT_A_TIME;
      file.push(bytes.subarray(from, to), to >= bytes.length);
      await breathe();
      signal.throwIfAborted();
    }
    settle();
  }
  zip.end();
  settle();
  return new Blob(packed, { type: "application/zip" });
}
