import { Zip, ZipDeflate } from "fflate";

/** A file to be packed. */
export interface PackedPart {
  readonly path: string;
  readonly text: string;
}

/**
 * Packs files into a zip archive, one after the other as they come, so that no more than one is ever held as text.
 *
 * @param signal ends it between two files
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
    file.push(encoder.encode(text), true);
    settle();
  }
  zip.end();
  settle();
  return new Blob(packed, { type: "application/zip" });
}
