import { closeSync, existsSync, openSync, readSync, statSync } from "node:fs";
import { isAbsolute, join, relative, resolve } from "node:path";
import { previewMatch } from "../../src/tables/foreign/previewMatch.ts";
import { encodingOf, sampleLayout } from "../../src/tables/foreign/sampleLayout.ts";
import { type MatchSuggestion, suggestMatches } from "../../src/tables/foreign/suggestMatches.ts";
import { writeMatches } from "../../src/tables/foreign/writeMatches.ts";
import type { House } from "../../src/tables/house.ts";
import type { LogFile } from "../../src/tables/logFile.ts";
import { readLogs } from "../../src/tables/readLogs.ts";

/** As much of a file as is looked at. */
const SAMPLE_BYTES = 256 * 1024;

/** The beginning of a file, up to the end of a line. */
function beginningOf(path: string): Uint8Array {
  const size = Math.min(SAMPLE_BYTES, statSync(path).size);
  const bytes = Buffer.alloc(size);
  const file = openSync(path, "r");
  try {
    readSync(file, bytes, 0, size, 0);
  } finally {
    closeSync(file);
  }
  if (size < SAMPLE_BYTES) return bytes;
  const end = bytes.lastIndexOf(0x0a);
  // A line's end in UTF-16LE is two bytes long.
  return end < 0 ? bytes : bytes.subarray(0, end + (bytes[end + 1] === 0 ? 2 : 1));
}

async function previewLines(
  path: string,
  bytes: Uint8Array,
  house: House,
  suggestion: MatchSuggestion,
  all: readonly MatchSuggestion[],
): Promise<readonly string[]> {
  const others = all.filter((one) => one !== suggestion).map(({ match }) => match);
  const { columns, rows, rowsRead, rowsSetAside, problems } = await previewMatch(
    path,
    bytes,
    suggestion.match,
    house,
    others,
    3,
  );
  const say = (name: string, value: number | string | null): string =>
    typeof value === "number" && /(^at$|_at$|_on$|^on$)/.test(name) && value > 1e11
      ? `${new Date(value).toISOString().slice(0, 16).replace("T", " ")} UTC`
      : typeof value === "number"
        ? String(Number(value.toPrecision(6)))
        : (value ?? "");
  return [
    `The first rows as they will be read (${rowsRead} read, ${rowsSetAside} set aside of those looked at):`,
    ...rows.map(
      (row) =>
        `  ${columns.flatMap((name, i) => (row[i] === null ? [] : [`${name} ${say(name, row[i] ?? null)}`])).join(", ")}`,
    ),
    ...problems
      .slice(0, 5)
      .map(({ line, column, message }) => `  ${line === null ? "" : `line ${line}, `}${column ?? ""}: ${message}`),
  ];
}

/**
 * Prints how a file of other headings may be read, as a columns.toml to look over, and returns the exit status: 0 with a
 * suggestion, 1 where none can be made, 2 where the file cannot be read.
 */
export async function printMatch(folder: string, named: string, logs: readonly LogFile[]): Promise<number> {
  const inFolder = join(folder, named);
  const file = existsSync(inFolder) && !isAbsolute(named) ? inFolder : named;
  if (!existsSync(file) || !statSync(file).isFile()) {
    console.error(`There is no file ${named}, neither in ${folder} nor here.`);
    return 2;
  }
  const inside = relative(resolve(folder), resolve(file)).replaceAll("\\", "/");
  const path = inside.startsWith("..") ? inside.slice(inside.lastIndexOf("/") + 1) : inside;
  const { house } = await readLogs(logs.filter((log) => log.path === "house.toml"));
  const bytes = beginningOf(file);
  const encoding = encodingOf(bytes);
  const text = new TextDecoder(encoding ?? (bytes[0] === 0xff ? "utf-16le" : bytes[0] === 0xfe ? "utf-16be" : "utf-8"));
  const sample = sampleLayout(text.decode(bytes));
  const found = sample ? suggestMatches(path, sample, encoding, house) : [];
  if (!sample || found.length === 0) {
    console.error(
      `${named} looks like no table of the log format.${sample ? ` Headings found: ${sample.headings.join(", ")}.` : ""} data/README.md says how to write columns.toml by hand.`,
    );
    return 1;
  }
  const previews = await Promise.all(found.map((one) => previewLines(path, bytes, house, one, found)));
  const notes = found.map(({ toDecide }, i) => [
    ...toDecide.map((line) => `Look at this: ${line}`),
    ...(previews[i] ?? []),
  ]);
  console.log(
    "# A suggestion from headings and first values. Look it over, mend it, and save it as columns.toml beside the logs.",
  );
  console.log(
    writeMatches(
      found.map(({ match }) => match),
      (_, index) => notes[index] ?? [],
    ),
  );
  return 0;
}
