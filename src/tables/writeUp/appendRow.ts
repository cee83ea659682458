import { CsvReader, fieldText } from "../csvReader.ts";
import type { Column } from "../declarations.ts";
import { decoded, UndecodableText } from "../decode.ts";
import { declaredOf } from "../fileOf.ts";
import { recogniseDelimiter } from "../firstLine.ts";
import { mapHeader } from "../headerMap.ts";
import type { House } from "../house.ts";
import { fileNames } from "../insideName.ts";
import { localTimeOf } from "../localTime.ts";
import { declarationOf } from "../tableDeclarations.ts";
import type { StageDraft } from "./draft.ts";
import { columnUnder, type WriteUpTable } from "./writeUpStages.ts";

/** A log file as it lies on disk. */
export interface FileOnDisk {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** The bytes to put behind a file, or why that cannot be done. */
export type Appended =
  | { readonly kind: "row"; readonly bytes: Uint8Array; readonly text: string }
  | { readonly kind: "refusal"; readonly sentence: string };

const refusal = (sentence: string): Appended => ({ kind: "refusal", sentence });

/** Figures that a value typed in one unit keeps when its file has another. */
const DIGITS = 6;

/** The headings of a log file, and what parts its fields. */
export interface Headings {
  readonly names: readonly string[];
  readonly delimiter: string;
  readonly decimal: "." | ",";
}

/** The headings of a file's text; an empty file has none. */
export function headingsOf(text: string, house: House, path: string): Headings {
  const declared = declaredOf(house, path);
  const first = recogniseDelimiter(text, declared.delimiter, true);
  const delimiter = first?.delimiter ?? ",";
  let names: readonly string[] = [];
  const numbers: string[] = [];
  const csv = new CsvReader(delimiter, (record) => {
    const cells = Array.from({ length: record.count }, (_, at) => fieldText(record, at).trim());
    if (names.length === 0) {
      if (cells.some((cell) => cell !== "")) names = cells;
    } else numbers.push(...cells.filter((cell) => /^-?\d+[.,]\d+$/.test(cell)));
  });
  csv.push(text.slice(first?.skip ?? 0));
  csv.end();
  const usual = delimiter !== "," && numbers.some((text) => text.includes(",")) ? "," : ".";
  return { names, delimiter, decimal: declared.decimal ?? usual };
}

function numberIn(text: string, from: string, to: string, column: Column): string {
  const plain = text.trim().replace("−", "-").replace(",", ".");
  if (from === to || column.family === undefined) return plain;
  const suffixOf = (heading: string) => fileNames(column).find(({ name }) => name === heading)?.suffix;
  const [typed, written] = [suffixOf(from), suffixOf(to)];
  if (!typed || !written) return plain;
  const inside = Number(plain) * typed.factor + typed.offset;
  return String(Number(((inside - written.offset) / written.factor).toPrecision(DIGITS)));
}

function momentIn(text: string, heading: string, house: House): string {
  const local = text.trim().replace("T", " ");
  if (!heading.endsWith("_utc")) return local;
  const [instant] = localTimeOf(house.timeZone).instantsOf(Date.parse(`${local.replace(" ", "T")}Z`));
  return instant === undefined ? local : new Date(instant).toISOString().slice(0, 16).replace("T", " ");
}

/** A typed value as the file under `heading` writes it. The draft has passed the rules by then. */
function written(
  text: string,
  typedUnder: string,
  heading: string,
  column: Column,
  file: Headings,
  house: House,
): string {
  if (column.kind === "instant") return momentIn(text, heading, house);
  if (column.kind === "number") return numberIn(text, typedUnder, heading, column).replace(".", file.decimal);
  return text.trim();
}

const field = (text: string, delimiter: string): string =>
  text.includes(delimiter) || /["\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/**
 * A stage as a row under given headings: their order, their units, their decimal mark.
 *
 * @returns null and the sentence where a typed value has no column to go to
 */
export function rowUnder(
  table: WriteUpTable,
  run: string,
  typed: StageDraft,
  file: Headings,
  house: House,
): { readonly row: string } | { readonly sentence: string } {
  const { mapped, faults } = mapHeader(file.names, declarationOf(table));
  const bad = faults.find(({ effect }) => effect !== "note");
  if (bad !== undefined) return { sentence: bad.message };
  const cells = new Array<string>(file.names.length).fill("");
  const runAt = mapped.find(({ inside }) => inside === "run")?.index ?? -1;
  cells[runAt] = run;
  const homeless: string[] = [];
  for (const [heading, text] of Object.entries(typed)) {
    const column = columnUnder(table, heading);
    const place = column === null ? undefined : mapped.find((one) => one.column.stem === column.stem);
    if (column === null || place === undefined) homeless.push(heading);
    else cells[place.index] = written(text, heading, place.heading.toLowerCase(), column, file, house);
  }
  if (homeless.length > 0) {
    return {
      sentence: `The file has no column for ${homeless.join(", ")}: add the heading to its first line, or leave the box blank.`,
    };
  }
  return { row: cells.map((cell) => field(cell, file.delimiter)).join(file.delimiter) };
}

async function textOf({ bytes }: FileOnDisk, encoding: string | null): Promise<string> {
  let text = "";
  const pieces = (async function* () {
    yield bytes;
  })();
  for await (const piece of decoded(pieces, encoding)) text += piece;
  return text;
}

const begins = (bytes: Uint8Array, ...mark: readonly number[]): boolean => mark.every((byte, at) => bytes[at] === byte);

/**
 * What to put behind a log file so that it holds one more row: under its own headings, in its units, with its delimiter,
 * decimal mark and line ends. The file's bytes stay as they are.
 */
export async function appendRow(
  file: FileOnDisk,
  table: WriteUpTable,
  run: string,
  typed: StageDraft,
  house: House,
): Promise<Appended> {
  const { encoding } = declaredOf(house, file.path);
  if (begins(file.bytes, 0xff, 0xfe) || begins(file.bytes, 0xfe, 0xff) || /utf-?16/i.test(encoding ?? "")) {
    return refusal(
      `${file.path} is written in UTF-16, which cannot be added to here. Save it as UTF-8 once, or download the row.`,
    );
  }
  let text: string;
  try {
    text = await textOf(file, encoding);
  } catch (error) {
    if (error instanceof UndecodableText) return refusal(`${file.path} cannot be read: ${error.fault.message}`);
    throw error;
  }
  const headings = headingsOf(text, house, file.path);
  if (headings.names.length === 0) return refusal(`${file.path} is empty: put its headings on the first line.`);
  const made = rowUnder(table, run, typed, headings, house);
  if ("sentence" in made) return refusal(`${file.path}: ${made.sentence}`);
  const isUtf8 = encoding === null || /^utf-?8$/i.test(encoding);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: ASCII is what all encodings but UTF-16 share
  if (!isUtf8 && !/^[\x00-\x7f]*$/.test(made.row)) {
    return refusal(`${file.path} is written in ${encoding}; leave out letters with accents, or download the row.`);
  }
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  const added = `${/[\r\n]$/.test(text) ? "" : end}${made.row}${end}`;
  return { kind: "row", bytes: new TextEncoder().encode(added), text: made.row };
}

/** A stage as a file of its own, to be put behind the house's: all its columns in the format's order, as they were typed. */
export function stageCsv(table: WriteUpTable, run: string, typed: StageDraft, house: House): string {
  const names = declarationOf(table).columns.map((column) => {
    const named = fileNames(column).find(({ name }) => typed[name] !== undefined);
    const usual = fileNames(column)[column.family && house.units === "us" ? 1 : 0] ?? fileNames(column)[0];
    return (named ?? usual)?.name ?? column.stem;
  });
  const made = rowUnder(table, run, typed, { names, delimiter: ",", decimal: "." }, house);
  if ("sentence" in made) throw new RangeError(made.sentence);
  return `${names.join(",")}\n${made.row}\n`;
}
