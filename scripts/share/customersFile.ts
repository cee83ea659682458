import { CsvReader, fieldText } from "../../src/tables/csvReader.ts";
import { recogniseDelimiter } from "../../src/tables/firstLine.ts";

/** Where a new piece of text goes, by characters from the file's start; `from` to `to` is what it takes the place of. */
interface Splice {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export interface CustomersFileOptions {
  /** As house.toml declares it; null where it does not. */
  readonly encoding: string | null;
  readonly delimiter: string | null;
}

function encodingOf(bytes: Uint8Array, declared: string | null): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return "utf-8";
  return new TextDecoder(declared ?? "utf-8").encoding;
}

/** Bytes that the first characters of `text` take in the file. */
function bytesOf(text: string, encoding: string): number {
  if (encoding.startsWith("utf-16")) return text.length * 2;
  return encoding === "utf-8" ? Buffer.byteLength(text, "utf8") : text.length;
}

/** Only plain ASCII is ever written: it has the same bytes in every encoding read here but UTF-16. */
function written(text: string, encoding: string): Buffer {
  const bytes = Buffer.from(text, encoding.startsWith("utf-16") ? "utf16le" : "latin1");
  return encoding === "utf-16be" ? bytes.swap16() : bytes;
}

/** The places of every record's fields, by characters from the start of `text`. */
function records(text: string, delimiter: string, skip: number) {
  const found: {
    readonly line: number;
    readonly fields: readonly string[];
    readonly spans: readonly (readonly [number, number])[];
  }[] = [];
  const firstLine = 1 + (text.slice(0, skip).match(/\r\n|\r|\n/g)?.length ?? 0);
  const reader = new CsvReader(
    delimiter,
    (record) => {
      // What a reader holds is always the rest of the text.
      const base = text.length - record.text.length;
      const places = Array.from({ length: record.count }, (_, i) => i);
      found.push({
        line: record.line,
        fields: places.map((i) => fieldText(record, i).trim()),
        spans: places.map((i) => [base + (record.starts[i] ?? 0), base + (record.ends[i] ?? 0)] as const),
      });
    },
    firstLine,
  );
  reader.push(text.slice(skip));
  reader.end();
  return found;
}

/** The end of a record: after the closing quotation mark of its last field, where it has one. */
const endOf = (text: string, [, to]: readonly [number, number]): number => (text[to] === '"' ? to + 1 : to);

/**
 * customers.csv with link keys written into it and not one other byte changed: encoding, byte order mark, line ends,
 * quotation marks, order, and columns of the house's own stay. A file without the column gets it as its last.
 *
 * @param keys by line in the file, from 1
 * @throws {RangeError} for an encoding in which the places of characters cannot be told, or a line that is no row
 */
export function withKeys(
  bytes: Uint8Array,
  keys: ReadonlyMap<number, string>,
  options: CustomersFileOptions,
): Uint8Array {
  const encoding = encodingOf(bytes, options.encoding);
  const text = new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes);
  if (bytesOf(text, encoding) !== bytes.length) {
    throw new RangeError(`withKeys requires UTF-8, UTF-16 or an encoding of one byte a character; got ${encoding}`);
  }
  const mark = text.startsWith("\ufeff") ? 1 : 0;
  const first = recogniseDelimiter(text.slice(mark), options.delimiter, true);
  const delimiter = first?.delimiter ?? ",";
  const rows = records(text, delimiter, mark + (first?.skip ?? 0)).filter(({ fields }) =>
    fields.some((field) => field !== ""),
  );
  const [header, ...data] = rows;
  if (header === undefined) throw new RangeError("withKeys requires a header line; got an empty file");
  const column = header.fields.findIndex((heading) => heading.toLowerCase() === "link_key");
  // Trailing empty columns, which spreadsheets leave, stay behind the new one.
  const width = column >= 0 ? column : header.fields.length;
  const splices: Splice[] = [];
  if (column < 0) {
    const at = endOf(text, header.spans.at(-1) ?? [0, 0]);
    splices.push({ from: at, to: at, text: `${delimiter}link_key` });
  }
  for (const [line, key] of keys) {
    const row = data.find((candidate) => candidate.line === line);
    if (row === undefined) throw new RangeError(`withKeys requires lines of customers.csv; got ${line}`);
    const span = row.spans[width];
    if (column >= 0 && span !== undefined) splices.push({ from: span[0], to: span[1], text: key });
    else {
      const at = endOf(text, row.spans.at(-1) ?? [0, 0]);
      splices.push({ from: at, to: at, text: `${delimiter.repeat(width - row.fields.length + 1)}${key}` });
    }
  }
  const parts: Uint8Array[] = [];
  let at = 0;
  for (const { from, to, text: piece } of splices.toSorted((a, b) => a.from - b.from)) {
    const start = bytesOf(text.slice(0, from), encoding);
    parts.push(bytes.subarray(at, start), written(piece, encoding));
    at = bytesOf(text.slice(0, to), encoding);
  }
  parts.push(bytes.subarray(at));
  return Buffer.concat(parts);
}
