import { decoded, UndecodableText } from "../../tables/decode.ts";
import { type ForeignMatch, MATCH_FILE, meansFile, patternOf } from "../../tables/foreign/foreignMatch.ts";
import { readMatches } from "../../tables/foreign/readMatches.ts";
import { encodingOf, layoutAsSaid, type SampleLayout, sampleLayout } from "../../tables/foreign/sampleLayout.ts";
import type { LogFile } from "../../tables/logFile.ts";
import { recogniseFile } from "../../tables/recogniseTable.ts";
import type { ChosenFile } from "./chosenFile.ts";
import { isTextLog, logsInFolder } from "./logsInFolder.ts";

/** The beginning of a file that has headings of its own. */
export interface Beginning {
  readonly bytes: Uint8Array;
  readonly text: string;
  readonly encoding: string | null;
}

/** Files of one kind, with headings that no table of the log format has. */
export interface Strangers {
  /** What their match would be for: a pattern that means these of the chosen files and no others. */
  readonly pattern: string;
  readonly paths: readonly string[];
  /** Of the first of them. */
  readonly beginning: Beginning;
  readonly sample: SampleLayout;
  /** How the chosen columns.toml reads them; none where nothing says it yet. */
  readonly matches: readonly ForeignMatch[];
}

/** What was chosen, before any of it is read. */
export interface LookedOver {
  /** The folder that the logs lie in, as it was chosen, with its closing slash. */
  readonly root: string;
  /** Texts of house.toml and columns.toml; null where there is none. */
  readonly house: string | null;
  readonly matches: string | null;
  /** Those that nothing says how to read before those that columns.toml speaks of. */
  readonly strangers: readonly Strangers[];
}

type Found = Omit<Strangers, "pattern" | "matches">;

/** As much of a file as is looked at. */
const SAMPLE_BYTES = 64 * 1024;

async function firstBytes(file: LogFile): Promise<Uint8Array> {
  const bytes = new Uint8Array(SAMPLE_BYTES);
  let length = 0;
  for await (const chunk of file.chunks()) {
    const part = chunk.subarray(0, SAMPLE_BYTES - length);
    bytes.set(part, length);
    length += part.length;
    if (length === SAMPLE_BYTES) break;
  }
  if (length < SAMPLE_BYTES) return bytes.subarray(0, length);
  const end = bytes.lastIndexOf(0x0a);
  // A line's end in UTF-16LE is two bytes long.
  return end < 0 ? bytes : bytes.subarray(0, end + (bytes[end + 1] === 0 ? 2 : 1));
}

const once = (bytes: Uint8Array): AsyncIterable<Uint8Array> =>
  (async function* () {
    yield bytes;
  })();

/** The text of a file; null where it is none. */
async function textOf(chunks: AsyncIterable<Uint8Array>, encoding: string | null): Promise<string | null> {
  let text = "";
  try {
    for await (const piece of decoded(chunks, encoding)) text += piece;
    return text;
  } catch (error) {
    if (error instanceof UndecodableText) return null;
    throw error;
  }
}

async function strangerIn(file: LogFile): Promise<Found | null> {
  const { byHeadings } = await recogniseFile(file);
  if (byHeadings) return null;
  const bytes = await firstBytes(file);
  const encoding = encodingOf(bytes);
  const text = await textOf(once(bytes), encoding);
  const sample = text === null ? null : sampleLayout(text);
  return text === null || sample === null ? null : { paths: [file.path], beginning: { bytes, text, encoding }, sample };
}

const sameKind = (a: Found, b: Found): boolean =>
  a.sample.delimiter === b.sample.delimiter &&
  a.sample.skipLines === b.sample.skipLines &&
  a.beginning.encoding === b.beginning.encoding &&
  a.sample.headings.join("\0") === b.sample.headings.join("\0");

/**
 * Files under one pattern, where it means no file that is read in another way; each by itself otherwise.
 *
 * @param others paths of all other files that were chosen
 */
function grouped(found: readonly Found[], others: readonly string[]): readonly Strangers[] {
  const byPattern = new Map<string, Found[]>();
  for (const one of found) {
    const pattern = patternOf(one.paths[0] ?? "");
    byPattern.set(pattern, [...(byPattern.get(pattern) ?? []), one]);
  }
  return [...byPattern].flatMap(([pattern, [first, ...rest]]): readonly Strangers[] => {
    if (first === undefined) return [];
    const all = [first, ...rest];
    const isTheirs = rest.every((one) => sameKind(first, one)) && !others.some((path) => meansFile(pattern, path));
    if (isTheirs) return [{ ...first, pattern, matches: [], paths: all.flatMap(({ paths }) => paths) }];
    return all.map((one) => ({ ...one, matches: [], pattern: one.paths[0] ?? "" }));
  });
}

/** The files of a pattern that the matches of a columns.toml are for, laid out as they say; null where none is there, or no text. */
async function known(
  pattern: string,
  matches: readonly ForeignMatch[],
  logs: readonly LogFile[],
): Promise<Strangers | null> {
  const own = logs.filter(({ path }) => meansFile(pattern, path));
  const [first] = own;
  const [match] = matches;
  if (first === undefined || match === undefined) return null;
  const bytes = await firstBytes(first);
  const encoding = match.encoding ?? encodingOf(bytes);
  const text = await textOf(once(bytes), encoding);
  if (text === null) return null;
  const delimiter = match.delimiter ?? sampleLayout(text)?.delimiter ?? ",";
  const sample = layoutAsSaid(text, delimiter, match.skipLines + 1, match.skipAfterHeadings);
  return (
    sample && { pattern, paths: own.map(({ path }) => path), beginning: { bytes, text, encoding }, sample, matches }
  );
}

/**
 * Looks over what a reader chose: its settings, and the files that somebody has to say how to read or has said it of. Only beginnings are
 * read, and nothing is taken in.
 *
 * @throws {RefusedLogs} on an archive that cannot be opened
 */
export async function lookOver(chosen: readonly ChosenFile[]): Promise<LookedOver> {
  const { root, logs } = await logsInFolder(chosen);
  const settings = async (name: string): Promise<string | null> => {
    const file = logs.find(({ path }) => path === name);
    return file ? textOf(file.chunks(), null) : null;
  };
  const matches = await settings(MATCH_FILE);
  const said = readMatches(matches ?? "").matches;
  const found: Found[] = [];
  for (const file of [...logs].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    if (!isTextLog(file.path) || said.some(({ files }) => meansFile(files, file.path))) continue;
    // A file that cannot be opened is the reading's to name.
    const stranger = await strangerIn(file).catch(() => null);
    if (stranger !== null) found.push(stranger);
  }
  const theirs = new Set(found.flatMap(({ paths }) => paths));
  const others = logs.flatMap(({ path }) => (theirs.has(path) ? [] : [path]));
  const matched: Strangers[] = [];
  for (const pattern of new Set(said.map(({ files }) => files))) {
    const own = said.filter(({ files }) => files === pattern);
    const one = await known(pattern, own, logs).catch(() => null);
    if (one !== null) matched.push(one);
  }
  return { root, house: await settings("house.toml"), matches, strangers: [...grouped(found, others), ...matched] };
}
