import type { CellFault } from "./cellFault.ts";
import {
  type CellContext,
  type DoubledTime,
  type NumberCell,
  numberCellOf,
  type TextCell,
  textCellOf,
  trimmedEnd,
  trimmedStart,
} from "./cells.ts";
import { type CsvRecord, DOUBLED_QUOTES, fieldText, STRAY_QUOTE } from "./csvReader.ts";
import { withOwnWordHint } from "./foreign/ownWordHint.ts";
import type { HeaderMap, MappedColumn } from "./headerMap.ts";
import { type ProblemLog, quotedValue } from "./problemLog.ts";
import { RowStore } from "./rowStore.ts";

interface Reader {
  readonly mapped: MappedColumn;
  readonly slot: number;
  readonly number: NumberCell | null;
  readonly text: TextCell;
}

const strayQuote: CellFault = {
  rule: "stray-quote",
  message: "There is a quotation mark inside a value that does not begin and end with one.",
  hint: 'Put the whole value in quotation marks and double those inside: "a 6"" bed"',
};

export interface PendingCell extends DoubledTime {
  readonly row: number;
  readonly slot: number;
  readonly text: string;
}

/** Turns the records of one file into rows of a store, reporting every fault with its line. */
export class RowReader {
  readonly store = new RowStore();
  /** Rows that carry anything, kept or not. */
  dataRows = 0;
  readonly pending: PendingCell[] = [];
  readonly readers: readonly Reader[];
  readonly unknownSlots: readonly { readonly slot: number; readonly index: number; readonly heading: string }[];
  private readonly file: string;
  private readonly header: HeaderMap;
  private readonly log: ProblemLog;
  private readonly runIndex: number;
  private readonly countOnly: boolean;
  private readonly unreadIndexes: readonly number[];
  /** Values under headings that stand twice. */
  valuesUnread = 0;

  /**
   * @param keepUnknown keep the columns that the format does not know
   * @param countOnly the file is set aside as a whole: count its rows, report nothing more
   */
  constructor(
    file: string,
    header: HeaderMap,
    context: CellContext,
    log: ProblemLog,
    keepUnknown: boolean,
    countOnly: boolean,
  ) {
    this.countOnly = countOnly;
    this.unreadIndexes = header.faults.flatMap(({ indexes }) => indexes);
    this.file = file;
    this.header = header;
    this.log = log;
    this.readers = header.mapped.map((mapped) => {
      const number = numberCellOf(mapped, context);
      return { mapped, number, text: textCellOf(mapped), slot: this.store.addColumn(number ? "number" : "text") };
    });
    this.unknownSlots = keepUnknown
      ? header.unknown.map(({ index, heading }) => ({ index, heading, slot: this.store.addColumn("text") }))
      : [];
    this.runIndex = header.mapped.find(({ inside }) => inside === "run")?.index ?? -1;
  }

  report(
    line: number,
    heading: string | null,
    value: string | null,
    fault: CellFault,
    aside: boolean,
    run: string | null,
  ): void {
    this.log.add({
      file: this.file,
      line,
      column: heading,
      value: value === null ? null : quotedValue(value),
      rule: fault.rule,
      message: value === null ? fault.message : fault.message.replaceAll(value, () => quotedValue(value)),
      hint: fault.hint,
      effect: aside ? "row-set-aside" : "value-blanked",
      run,
    });
  }

  setAside(rows = 1): void {
    this.log.countsOf(this.file).rowsSetAside += rows;
  }

  private runOf(record: CsvRecord): string | null {
    if (this.runIndex < 0 || this.runIndex >= record.count) return null;
    return fieldText(record, this.runIndex).trim() || null;
  }

  /** True when every field is blank: a spreadsheet's empty row. */
  isBlank(record: CsvRecord): boolean {
    for (let i = 0; i < record.count; i++) {
      const start = record.starts[i] as number;
      const end = record.ends[i] as number;
      if (trimmedStart(record.text, start, end) < end) return false;
    }
    return true;
  }

  read(record: CsvRecord): void {
    if (record.openQuote) {
      this.readOpenQuote(record);
      return;
    }
    const firstEnd = record.ends[0] as number;
    const startsBlank = trimmedStart(record.text, record.starts[0] as number, firstEnd) === firstEnd;
    if (startsBlank && this.isBlank(record)) return;
    const { width } = this.header;
    if (record.count < width || (record.count > width && this.hasMore(record, width))) {
      this.readRagged(record, width);
      return;
    }
    this.dataRows++;
    if (this.countOnly) return;
    this.store.makeRoom();
    let keep = true;
    for (const reader of this.readers) if (!this.readCell(record, reader)) keep = false;
    if (!keep) {
      this.setAside();
      while (this.pending.at(-1)?.row === this.store.rowCount) this.pending.pop();
      return;
    }
    for (const { slot, index } of this.unknownSlots) {
      (this.store.values[slot] as (string | null)[])[this.store.rowCount] = fieldText(record, index).trim() || null;
    }
    for (const index of this.unreadIndexes) if (fieldText(record, index).trim() !== "") this.valuesUnread++;
    this.store.keepRow(record.line);
  }

  /** Reads one cell into the row that is being made; false when the row cannot be kept. */
  private readCell(record: CsvRecord, { mapped, slot, number, text: textCell }: Reader): boolean {
    const { index, column, heading } = mapped;
    const row = this.store.rowCount;
    let text = record.text;
    let start = record.starts[index] as number;
    let end = record.ends[index] as number;
    if (record.flags[index] === DOUBLED_QUOTES) {
      text = fieldText(record, index);
      start = 0;
      end = text.length;
    }
    start = trimmedStart(text, start, end);
    end = trimmedEnd(text, start, end);
    const values = this.store.values[slot];
    let fault: CellFault | null = null;
    if (start === end) {
      if (number) (values as Float64Array)[row] = Number.NaN;
      else (values as (string | null)[])[row] = null;
      if (!column.needed) return true;
      fault = {
        rule: "needed-value-missing",
        message: `${heading} is blank, and the row cannot be read without it.`,
        hint: "Fill it in.",
      };
    } else if (record.hasStrayQuote && record.flags[index] === STRAY_QUOTE) fault = strayQuote;
    else if (number) {
      const value = number(text, start, end, record.lines[index] as number);
      if (typeof value === "number") {
        (values as Float64Array)[row] = value;
        return true;
      }
      if ("earlier" in value) {
        (values as Float64Array)[row] = Number.NaN;
        this.pending.push({ ...value, row, slot, text: text.slice(start, end) });
        return true;
      }
      fault = value;
    } else {
      const value = textCell(text, start, end);
      if (typeof value === "string") {
        const texts = values as (string | null)[];
        // A kiln's name stands in every row of a logger's file: one text for all of them, not millions to keep and to sweep up.
        const above = row > 0 ? texts[row - 1] : null;
        texts[row] = above === value ? above : value;
        return true;
      }
      fault = value;
    }
    if (number) (values as Float64Array)[row] = Number.NaN;
    else (values as (string | null)[])[row] = null;
    const found = start === end ? null : text.slice(start, end);
    if (found !== null && mapped.foreign) fault = withOwnWordHint(fault, mapped.foreign, found);
    this.report(record.lines[index] as number, heading, found, fault, column.needed === true, this.runOf(record));
    return column.needed !== true;
  }

  /** True when a field past the headings holds anything. */
  hasMore(record: CsvRecord, width: number): boolean {
    for (let i = width; i < record.count; i++) {
      const end = record.ends[i] as number;
      if (trimmedStart(record.text, record.starts[i] as number, end) < end) return true;
    }
    return false;
  }

  /** Sets a row aside whose fields do not fit the headings. */
  readRagged(record: CsvRecord, width: number): void {
    this.dataRows++;
    if (this.countOnly) return;
    this.setAside();
    const fault: CellFault = {
      rule: record.count < width ? "too-few-fields" : "too-many-fields",
      message: `The row has ${record.count} ${record.count === 1 ? "field" : "fields"}, and the heading names ${width}.`,
      hint:
        record.count < width
          ? "Add the delimiters that are missing, or finish a line that was cut short."
          : "A value that holds the delimiter must stand in quotation marks; a column with values must have a heading.",
    };
    const first = record.text.slice(record.starts[0], record.ends[record.count - 1]);
    this.report(record.line, null, first, fault, true, this.runOf(record));
  }

  private readOpenQuote(record: CsvRecord): void {
    this.dataRows += record.linesTaken;
    if (this.countOnly) return;
    this.setAside(record.linesTaken);
    const fault: CellFault = {
      rule: "open-quote",
      message: `A quotation mark that is opened here is never closed, so that lines ${record.line} to ${record.lastLine} cannot be told apart.`,
      hint: "Close it, or double a quotation mark that belongs to the value.",
    };
    this.report(record.line, null, null, fault, true, null);
  }
}
