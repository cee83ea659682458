import { CsvReader, fieldText } from "../csvReader.ts";
import type { DateOrder } from "../house.ts";

/** The beginning of a foreign file, laid out in rows, with what its own look says of how it is written. */
export interface SampleLayout {
  readonly delimiter: string;
  /** Lines above the headings, and under them before the first row. */
  readonly skipLines: number;
  readonly skipAfterHeadings: number;
  readonly headings: readonly string[];
  /** What the row under the headings says of units, where there is one; else empty texts. */
  readonly unitRow: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** By column: its values, where all of the text holds only few of them; else none. A relay may close first after hours. */
  readonly few: readonly (readonly string[])[];
}

const DELIMITERS = [";", "\t", ",", "|"] as const;
/** A column of more different values than these is no column of words. */
const MOST_WORDS = 12;
/** Rows looked at: enough to see past a preamble and meet a day above the twelfth. */
const ROWS = 400;

interface Row {
  readonly line: number;
  readonly fields: readonly string[];
}

function rowsBy(delimiter: string, text: string): readonly Row[] {
  const rows: Row[] = [];
  const reader = new CsvReader(delimiter, (record) => {
    if (record.openQuote || rows.length >= ROWS) return;
    rows.push({
      line: record.line,
      fields: Array.from({ length: record.count }, (_, i) => fieldText(record, i).trim()),
    });
  });
  reader.push(text);
  reader.end();
  return rows;
}

/** The values of each column in all rows below `line`, where they are few. */
function fewValues(delimiter: string, text: string, line: number, width: number): readonly (readonly string[])[] {
  const found = Array.from({ length: width }, () => new Set<string>());
  const reader = new CsvReader(delimiter, (record) => {
    if (record.openQuote || record.line <= line || record.count !== width) return;
    found.forEach((values, i) => {
      if (values.size > MOST_WORDS) return;
      const value = fieldText(record, i).trim();
      if (value !== "") values.add(value);
    });
  });
  reader.push(text);
  reader.end();
  return found.map((values) => (values.size > MOST_WORDS ? [] : [...values]));
}

/** Fields that carry anything: trailing delimiters of a preamble are no columns. */
const widthOf = ({ fields }: Row): number => fields.findLastIndex((field) => field !== "") + 1;

/** The width that most rows have, of those with two columns or more, and how many have it. */
function usualWidth(rows: readonly Row[]): { readonly width: number; readonly count: number } {
  const counts = new Map<number, number>();
  for (const row of rows) {
    const width = row.fields.length;
    if (width > 1) counts.set(width, (counts.get(width) ?? 0) + 1);
  }
  let best = { width: 1, count: 0 };
  for (const [width, count] of counts) {
    if (count > best.count || (count === best.count && width > best.width)) best = { width, count };
  }
  return best;
}

const isValue = (field: string): boolean => /^[<>+\-\u2212]?\d/.test(field);
const isWord = (field: string): boolean => field !== "" && !isValue(field);

/** @param under what stands below the headings, without blank lines */
function laidOut(
  text: string,
  delimiter: string,
  { line, fields: headings }: Row,
  under: readonly Row[],
  skipAfterHeadings: number,
): SampleLayout {
  const last = under[skipAfterHeadings - 1]?.line ?? line;
  const units = skipAfterHeadings > 0 ? under[0]?.fields : undefined;
  return {
    delimiter,
    skipLines: line - 1,
    skipAfterHeadings,
    headings,
    few: fewValues(delimiter, text, last, headings.length),
    unitRow: headings.map((_, i) => units?.[i] ?? ""),
    rows: under.slice(skipAfterHeadings).flatMap(({ fields }) => (fields.length === headings.length ? [fields] : [])),
  };
}

/**
 * The beginning of a file as somebody says that it is laid out; null where nothing stands on the line of the headings.
 *
 * @param line of the headings, from 1
 * @param linesUnder between the headings and the first row
 */
export function layoutAsSaid(text: string, delimiter: string, line: number, linesUnder: number): SampleLayout | null {
  const filled = rowsBy(delimiter, text).filter((row) => widthOf(row) > 0);
  const at = filled.findIndex((row) => row.line === line);
  const heading = filled[at];
  return heading ? laidOut(text, delimiter, heading, filled.slice(at + 1), linesUnder) : null;
}

/**
 * Where the headings of a foreign file stand and what parts its fields, from the look of its first rows; null where no
 * table can be seen in it. Nothing here is certain: it is shown to whoever knows the file.
 *
 * @param text the beginning of the file; a last line that is cut short does no harm
 */
export function sampleLayout(text: string): SampleLayout | null {
  let chosen: { delimiter: string; rows: readonly Row[]; width: number; count: number } | null = null;
  for (const delimiter of DELIMITERS) {
    const rows = rowsBy(delimiter, text);
    const { width, count } = usualWidth(rows);
    if (count >= 2 && count * width > (chosen ? chosen.count * chosen.width : 0))
      chosen = { delimiter, rows, width, count };
  }
  if (!chosen) return null;
  const { delimiter, rows, width } = chosen;
  const filled = rows.filter((row) => widthOf(row) > 0);
  const at = filled.findIndex((row) => {
    const words = row.fields.filter(isWord).length;
    return row.fields.length === width && words >= 2 && words > row.fields.filter(isValue).length;
  });
  const heading = filled[at];
  if (!heading) return null;
  const next = filled[at + 1];
  const unitRow =
    next !== undefined && !next.fields.some(isValue) && next.fields.some((field) => /[°%]|^[a-z]{1,3}$/i.test(field));
  return laidOut(text, delimiter, heading, filled.slice(at + 1), unitRow ? 1 : 0);
}

/** The decimal mark that the numbers of a file prove, or null where none does. */
export function decimalOf(values: readonly string[], delimiter: string): "." | "," | null {
  if (delimiter === ",") return null;
  const commas = values.filter((value) => /^[+\-\u2212]?\d+,\d+(\s*\D{0,4})?$/.test(value)).length;
  const points = values.filter((value) => /^[+\-\u2212]?\d+\.\d+(\s*\D{0,4})?$/.test(value)).length;
  return commas > points ? "," : points > 0 ? "." : null;
}

/** What dates say of their order: `iso` needs none, null cannot be told from these values. */
export function dateOrderOf(values: readonly string[]): {
  readonly order: DateOrder | "iso" | null;
  readonly short: boolean;
} {
  let order: DateOrder | null = null;
  let numeric = 0;
  let short = false;
  for (const value of values) {
    const parts = /^(\d{1,4})([./-])(\d{1,2})\2(\d{1,4})(?=$|[T\s,])/.exec(value);
    const named = /^\d{1,2}[.\s/-]+[a-z]{3,9}\.?[\s/,-]+(\d{2})(?=$|[T\s,])/i.exec(value);
    if (named) short = true;
    if (!parts || parts[1]?.length === 4) continue;
    numeric++;
    const [a, b, c] = [Number(parts[1]), Number(parts[3]), parts[4] ?? ""];
    if (c.length !== 4) short = true;
    if (a > 31) order = "ymd";
    else if (a > 12) order = order ?? "dmy";
    else if (b > 12) order = order ?? "mdy";
  }
  return { order: numeric === 0 ? "iso" : order, short };
}

/** The encoding to declare for a file's first bytes: null where the reader finds it out by itself (UTF-8, or a mark). */
export function encodingOf(bytes: Uint8Array): string | null {
  const [a, b] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return null;
  const zeros = (odd: 0 | 1): number => bytes.subarray(0, 400).filter((byte, i) => byte === 0 && i % 2 === odd).length;
  if (zeros(1) > 10) return "utf-16le";
  if (zeros(0) > 10) return "utf-16be";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream: true });
    return null;
  } catch {
    return "windows-1252";
  }
}
