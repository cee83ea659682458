const QUOTE = 0x22;
const LF = 0x0a;
const CR = 0x0d;

/** A quoted value longer than this is taken for a quotation mark that is never closed. */
const LONGEST_RECORD = 1_000_000;

/** How a field stands in the text. */
export const PLAIN = 0;
export const DOUBLED_QUOTES = 1;
export const STRAY_QUOTE = 2;

/**
 * One record. The reader owns it and overwrites it with the next: take what you need while it is handed to you.
 * Fields are offsets into `text`, so that numbers can be read without cutting strings.
 */
export interface CsvRecord {
  text: string;
  count: number;
  readonly starts: number[];
  readonly ends: number[];
  /** PLAIN, DOUBLED_QUOTES or STRAY_QUOTE (a quotation mark where RFC 4180 allows none). */
  readonly flags: number[];
  /** The line on which each field begins; more than one where a quoted field holds line breaks. */
  readonly lines: number[];
  /** The line on which the record begins, from 1. */
  line: number;
  /** The line on which it ends. */
  lastLine: number;
  hasStrayQuote: boolean;
  /** A quotation mark was opened in this record and never closed: it and all that follows is lost. */
  openQuote: boolean;
  /** Lines with anything on them that an open quote swallowed; 1 for every ordinary record. */
  linesTaken: number;
}

/** The text of field `index`, doubled quotes undone. */
export function fieldText(record: CsvRecord, index: number): string {
  const cut = record.text.slice(record.starts[index], record.ends[index]);
  return record.flags[index] === DOUBLED_QUOTES ? cut.replaceAll('""', '"') : cut;
}

function lineBreaksIn(text: string, from: number, to: number): number {
  let found = 0;
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i);
    if (code === LF || (code === CR && text.charCodeAt(i + 1) !== LF)) found++;
  }
  return found;
}

/**
 * A push reader for RFC 4180 text in pieces of any size, which never holds more than one piece and one record.
 *
 * Line breaks may be CR, LF or CRLF. Empty lines are handed on as records of one empty field. Nothing is repaired:
 * a stray quotation mark is flagged on its field, one that is never closed on the last record.
 */
export class CsvReader {
  private readonly delimiter: number;
  private readonly onRecord: (record: CsvRecord) => void;
  private rest = "";
  private line: number;
  private lost = false;
  private lostLineHasText = false;
  private afterReturn = false;
  private readonly record: CsvRecord = {
    text: "",
    count: 0,
    starts: [],
    ends: [],
    flags: [],
    lines: [],
    line: 1,
    lastLine: 1,
    hasStrayQuote: false,
    openQuote: false,
    linesTaken: 1,
  };

  /** @param firstLine the number of the first line that will be pushed, where some were taken off before */
  constructor(delimiter: string, onRecord: (record: CsvRecord) => void, firstLine = 1) {
    this.delimiter = delimiter.charCodeAt(0);
    this.onRecord = onRecord;
    this.line = firstLine;
  }

  push(piece: string): void {
    if (this.lost) this.swallow(piece);
    else this.scan(this.rest === "" ? piece : this.rest + piece, false);
  }

  end(): void {
    if (!this.lost) this.scan(this.rest, true);
    if (!this.lost) return;
    if (this.lostLineHasText) this.record.linesTaken++;
    this.record.lastLine = this.line - (this.lostLineHasText ? 0 : 1);
    this.onRecord(this.record);
  }

  private scan(text: string, final: boolean): void {
    this.record.text = text;
    let at = 0;
    while (at < text.length) {
      const next = this.scanRecord(text, at, final);
      if (next < 0) {
        if (!final && text.length - at <= LONGEST_RECORD) break;
        this.lose(text, at);
        return;
      }
      this.onRecord(this.record);
      at = next;
    }
    this.rest = at === 0 ? text : text.slice(at);
  }

  /** Reads one record from `start`; returns where the next begins, or -1 where the text ends inside it. */
  private scanRecord(text: string, start: number, final: boolean): number {
    const { record, delimiter } = this;
    const { starts, ends, flags, lines } = record;
    const length = text.length;
    let line = this.line;
    let count = 0;
    let at = start;
    record.hasStrayQuote = false;
    for (;;) {
      let flag = PLAIN;
      let from = at;
      let to = -1;
      lines[count] = line;
      if (text.charCodeAt(at) === QUOTE) {
        let close = text.indexOf('"', at + 1);
        while (close >= 0 && text.charCodeAt(close + 1) === QUOTE) {
          flag = DOUBLED_QUOTES;
          close = text.indexOf('"', close + 2);
        }
        if (close < 0 || (close + 1 >= length && !final)) return -1;
        line += lineBreaksIn(text, at + 1, close);
        from = at + 1;
        to = close;
        at = close + 1;
      }
      const rest = at;
      let code = 0;
      for (; at < length; at++) {
        code = text.charCodeAt(at);
        if (code === delimiter || code === LF || code === CR) break;
        if (code === QUOTE) flag = STRAY_QUOTE;
      }
      if (at >= length && !final) return -1;
      if (to < 0) to = at;
      else if (at > rest) {
        flag = STRAY_QUOTE;
        from -= 1;
        to = at;
      }
      if (flag === STRAY_QUOTE) record.hasStrayQuote = true;
      starts[count] = from;
      ends[count] = to;
      flags[count] = flag;
      count++;
      if (at < length && code === delimiter) {
        at++;
        // A delimiter as the very last character is followed by one more, empty, field.
        if (at >= length && !final) return -1;
        continue;
      }
      if (code === CR && at + 1 >= length && !final) return -1;
      record.count = count;
      record.line = this.line;
      record.lastLine = line;
      record.linesTaken = 1;
      record.openQuote = false;
      this.line = line + 1;
      return at >= length ? length : at + (code === CR && text.charCodeAt(at + 1) === LF ? 2 : 1);
    }
  }

  private lose(text: string, at: number): void {
    this.lost = true;
    this.rest = "";
    Object.assign(this.record, { text: "", count: 0, line: this.line, hasStrayQuote: false });
    this.record.openQuote = true;
    this.record.linesTaken = 0;
    this.swallow(text.slice(at));
  }

  private swallow(text: string): void {
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      const secondHalf = code === LF && this.afterReturn;
      this.afterReturn = code === CR;
      if (secondHalf) continue;
      if (code === LF || code === CR) {
        if (this.lostLineHasText) this.record.linesTaken++;
        this.lostLineHasText = false;
        this.line++;
      } else this.lostLineHasText = true;
    }
  }
}
