import { RefusedLogs } from "./chosenFile.ts";

// Records and their fields: APPNOTE.TXT 6.3.10, the ZIP file format's own specification, sections 4.3.7 to 4.3.16 and 4.5.3.

/** One file of an archive, as the archive's index has it. */
export interface ZipEntry {
  readonly name: string;
  /** How it is packed: 0 not at all, 8 deflated. */
  readonly method: number;
  readonly crc32: number;
  readonly packedBytes: number;
  /** Once it is unpacked. */
  readonly bytes: number;
  /** Where its own header begins, from the start of the archive. */
  readonly at: number;
}

const END = 0x06054b50;
const END_64_POINTER = 0x07064b50;
const END_64 = 0x06064b50;
const IN_INDEX = 0x02014b50;
const AT_FILE = 0x04034b50;

const BYTES_OF_END = 22;
const BYTES_OF_POINTER = 20;
const BYTES_OF_END_64 = 56;
const BYTES_IN_INDEX = 46;
const BYTES_AT_FILE = 30;
const LONGEST_REMARK = 0xffff;
/** Stands where a number does not fit and a longer one is given elsewhere. */
const ELSEWHERE = 0xffff_ffff;
const SIZES_64 = 0x0001;
const LOCKED = 1;

/** The index is held whole while it is read; this much names about 300,000 files. */
const LARGEST_INDEX = 32 * 1024 * 1024;

/** No archive, or one whose index contradicts itself. */
const broken = (): RefusedLogs => new RefusedLogs("it is no zip archive, or a damaged one");

async function bytesAt(blob: Blob, from: number, to: number): Promise<DataView> {
  if (!(from >= 0 && from <= to && to <= blob.size)) throw broken();
  return new DataView(await blob.slice(from, to).arrayBuffer());
}

const long = (view: DataView, at: number): number => Number(view.getBigUint64(at, true));

interface IndexPlace {
  readonly from: number;
  readonly bytes: number;
  readonly entries: number;
  /** Bytes that were put before the archive, so that all its places are that much too small. */
  readonly before: number;
}

/** Where the index lies, as the record at the archive's end says. */
async function indexPlace(blob: Blob): Promise<IndexPlace> {
  const tailFrom = Math.max(0, blob.size - BYTES_OF_END - LONGEST_REMARK);
  const tail = await bytesAt(blob, tailFrom, blob.size);
  let end = tail.byteLength - BYTES_OF_END;
  const isEnd = (at: number): boolean =>
    tail.getUint32(at, true) === END && at + BYTES_OF_END + tail.getUint16(at + 20, true) === tail.byteLength;
  while (end >= 0 && !isEnd(end)) end -= 1;
  if (end < 0) throw broken();
  const endsAt = tailFrom + end;
  const pointer = end - BYTES_OF_POINTER;
  if (pointer >= 0 && tail.getUint32(pointer, true) === END_64_POINTER) {
    const said = long(tail, pointer + 8);
    const record = await bytesAt(blob, said, said + BYTES_OF_END_64);
    if (record.getUint32(0, true) !== END_64) throw broken();
    return { entries: long(record, 32), bytes: long(record, 40), from: long(record, 48), before: 0 };
  }
  if (tail.getUint16(end + 4, true) !== tail.getUint16(end + 6, true)) {
    throw new RefusedLogs("it is one part of an archive in several");
  }
  const bytes = tail.getUint32(end + 12, true);
  const before = endsAt - bytes - tail.getUint32(end + 16, true);
  if (before < 0) throw broken();
  return { entries: tail.getUint16(end + 10, true), bytes, from: endsAt - bytes, before };
}

/** A name is UTF-8 where the archive says so, and mostly where it does not; letters of older systems are read as Latin ones. */
function nameIn(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** The longer numbers that an entry has behind its name, in the order of those that did not fit. */
function longNumbers(extra: DataView): (short: number) => number {
  let at = 0;
  while (at + 4 <= extra.byteLength && extra.getUint16(at, true) !== SIZES_64) at += 4 + extra.getUint16(at + 2, true);
  at += 4;
  return (short) => {
    if (short !== ELSEWHERE) return short;
    if (at + 8 > extra.byteLength) throw broken();
    at += 8;
    return long(extra, at - 8);
  };
}

/**
 * The files in a zip archive, from its index alone; folders are left out. Only the archive's end and its index are read.
 *
 * @throws {RefusedLogs} when it is no archive, damaged, or locked with a password: why, as the end of a sentence
 */
export async function readZipIndex(blob: Blob): Promise<readonly ZipEntry[]> {
  const place = await indexPlace(blob);
  if (place.bytes > LARGEST_INDEX) throw new RefusedLogs("it holds too many files");
  const index = await bytesAt(blob, place.from, place.from + place.bytes);
  const found: ZipEntry[] = [];
  let at = 0;
  for (let left = place.entries; left > 0; left -= 1) {
    if (at + BYTES_IN_INDEX > index.byteLength || index.getUint32(at, true) !== IN_INDEX) throw broken();
    const [name, extra, remark] = [28, 30, 32].map((field) => index.getUint16(at + field, true)) as [
      number,
      number,
      number,
    ];
    const next = at + BYTES_IN_INDEX + name + extra + remark;
    if (next > index.byteLength) throw broken();
    const nameAt = index.byteOffset + at + BYTES_IN_INDEX;
    const text = nameIn(new Uint8Array(index.buffer, nameAt, name)).replaceAll("\\", "/");
    if ((index.getUint16(at + 8, true) & LOCKED) !== 0) throw new RefusedLogs(`${text} is locked with a password`);
    const longer = longNumbers(new DataView(index.buffer, nameAt + name, extra));
    const bytes = longer(index.getUint32(at + 24, true));
    const packedBytes = longer(index.getUint32(at + 20, true));
    const header = longer(index.getUint32(at + 42, true)) + place.before;
    const method = index.getUint16(at + 10, true);
    const crc32 = index.getUint32(at + 16, true);
    if (!text.endsWith("/")) found.push({ name: text, method, crc32, packedBytes, bytes, at: header });
    at = next;
  }
  return found;
}

/**
 * The bytes of a file as they are packed.
 *
 * @throws {RefusedLogs} when they do not lie where the index says
 */
export async function packedIn(blob: Blob, { at, packedBytes }: ZipEntry): Promise<Blob> {
  const header = await bytesAt(blob, at, at + BYTES_AT_FILE);
  if (header.getUint32(0, true) !== AT_FILE) throw broken();
  const from = at + BYTES_AT_FILE + header.getUint16(26, true) + header.getUint16(28, true);
  if (from + packedBytes > blob.size) throw broken();
  return blob.slice(from, from + packedBytes);
}
