import { type CellFault, isSpace } from "./cellFault.ts";
import { usualTimeAt, writtenDate, writtenTime } from "./dateText.ts";
import type { DecimalMarks } from "./decimalMarks.ts";
import type { MappedColumn } from "./headerMap.ts";
import type { DateOrder } from "./house.ts";
import type { LocalTime } from "./localTime.ts";
import { numberFault } from "./numberText.ts";

/** A time in the doubled hour of a clock change: which of its two instants is meant is settled when the file has ended. */
export interface DoubledTime {
  readonly earlier: number;
  readonly later: number;
}

/** What the cells of one file share. */
export interface CellContext {
  readonly decimals: DecimalMarks;
  readonly dateOrder: DateOrder;
  readonly localTime: LocalTime;
}

/** A cell as read: a value, or what is wrong with it. Blank cells never come here. */
export type NumberCell = (text: string, start: number, end: number, line: number) => number | CellFault | DoubledTime;
export type TextCell = (text: string, start: number, end: number) => string | CellFault;

/** How some programs keep a spreadsheet from taking a text for a number: `="007"`. */
const TEXT_BY_FORMULA = /^="([^"]+)"$/;

const MS_AN_HOUR = 3_600_000;
/** No log of a malthouse that stands today begins before, and none can end after. */
const EARLIEST = Date.UTC(1990, 0, 1);
const LATEST = Date.UTC(2100, 0, 1);

function absurd(text: string): CellFault {
  return {
    rule: "absurd-date",
    message: `“${text}” lies outside the years 1990 to 2099.`,
    hint: "Look the year up again.",
  };
}

const tidy = (value: number): string => String(Number(value.toPrecision(6)));

function rangedNumber(mapped: MappedColumn, { decimals }: CellContext): NumberCell {
  const { factor, offset, label } = mapped.suffix ?? { factor: 1, offset: 0, label: mapped.column.unit ?? "" };
  const [low, high] = mapped.column.range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const whole = mapped.column.kind === "count";
  // Conversion rounds; a value typed at the very limit is inside it.
  const slack = 1e-9 * Math.max(1, Math.abs(low), Math.abs(high));
  const [least, most] = Number.isFinite(slack) ? [low - slack, high + slack] : [low, high];
  return (text, start, end, line) => {
    const written = decimals.read(text, start, end, line);
    if (Number.isNaN(written)) return numberFault(text.slice(start, end), decimals.current);
    const value = written * factor + offset;
    if (whole && !Number.isInteger(value)) {
      return {
        rule: "not-whole",
        message: `${mapped.heading} counts whole things; ${text.slice(start, end)} is not a whole number.`,
        hint: "Write the count itself, not a share.",
      };
    }
    if (value < least || value > most) {
      const [from, to] = [(low - offset) / factor, (high - offset) / factor];
      return {
        rule: "out-of-range",
        message: `${mapped.heading} of ${text.slice(start, end)} is outside ${tidy(from)} to ${tidy(to)}${label ? ` ${label}` : ""}.`,
        hint: "Look for a slip of the decimal mark, a value in another unit or in another column.",
      };
    }
    return value;
  };
}

function instant(mapped: MappedColumn, { dateOrder, localTime }: CellContext): NumberCell {
  const patient = (text: string): number | CellFault | DoubledTime => {
    const written = writtenTime(text, dateOrder);
    if ("rule" in written) return written;
    const local = written.localMilliseconds;
    if (local < EARLIEST || local >= LATEST) return absurd(text);
    if (written.offsetMinutes !== null) return local - written.offsetMinutes * 60_000;
    if (mapped.utc) return local;
    const instants = localTime.instantsOf(local);
    if (instants.length === 1) return instants[0] as number;
    if (instants.length === 2) return { earlier: instants[0] as number, later: instants[1] as number };
    return {
      rule: "missing-hour",
      message: `The clocks went forward over “${text}”: there was no such time.`,
      hint: "Look up the true time, or write it with its offset from UTC, as in 2026-03-08T03:30-05:00.",
    };
  };
  return (text, start, end) => {
    const local = usualTimeAt(text, start, end);
    if (local >= EARLIEST && local < LATEST) {
      if (mapped.utc) return local;
      const offset = localTime.offsetInHour(Math.floor(local / MS_AN_HOUR));
      if (!Number.isNaN(offset)) return local - offset;
    }
    return patient(text.slice(start, end).replaceAll(/[\u00a0\u202f]/g, " "));
  };
}

function date({ dateOrder }: CellContext): NumberCell {
  return (text, start, end) => {
    const cut = text.slice(start, end);
    // Spreadsheets like to add a midnight to a date.
    const value = writtenDate(cut.replace(/[ T]0?0:00(:00)?$/, ""), dateOrder);
    if (typeof value !== "number") return value;
    return value < EARLIEST || value >= LATEST ? absurd(cut) : value;
  };
}

const flags: Readonly<Record<string, number>> = { "0": 0, "1": 1, no: 0, yes: 1, false: 0, true: 1, off: 0, on: 1 };

/** Whether the log format knows this word as on or off. */
export const knowsFlag = (word: string): boolean => Object.hasOwn(flags, word.toLowerCase());

const flag: NumberCell = (text, start, end) => {
  const cut = text.slice(start, end);
  return (
    flags[cut.toLowerCase()] ?? {
      rule: "not-a-flag",
      message: `“${cut}” is neither 0 nor 1.`,
      hint: "Write 1 for on and 0 for off.",
    }
  );
};

/** The reader of a column whose values are kept as numbers; null for one that keeps text. */
export function numberCellOf(mapped: MappedColumn, context: CellContext): NumberCell | null {
  switch (mapped.column.kind) {
    case "number":
    case "count":
      return rangedNumber(mapped, context);
    case "instant":
      return instant(mapped, context);
    case "date":
      return date(context);
    case "flag":
      return flag;
    default:
      return null;
  }
}

/** The reader of a column that keeps text: ids, texts and choices. */
export function textCellOf(mapped: MappedColumn): TextCell {
  const { kind, choices = [] } = mapped.column;
  let last = "";
  if (kind === "choice") {
    return (text, start, end) => {
      const cut = text.slice(start, end);
      return (
        choices.find((choice) => choice === cut.toLowerCase()) ?? {
          rule: "not-a-choice",
          message: `“${cut}” is not one of ${choices.join(", ")}.`,
          hint: "Write one of these words.",
        }
      );
    };
  }
  return (text, start, end) => {
    // Long runs of one kiln's name share one string.
    if (last.length === end - start && text.startsWith(last, start)) return last;
    const written = text.slice(start, end).replaceAll(/[\u00a0\u202f\u2007]/g, " ");
    const cut = TEXT_BY_FORMULA.exec(written)?.[1]?.trim() ?? written;
    if (kind === "id" && /^\d(\.\d+)?E\+\d\d$/.test(cut)) {
      return {
        rule: "damaged-id",
        message: `“${cut}” looks like a long number that a spreadsheet has cut short.`,
        hint: "Format the column as text in the spreadsheet and enter the name again.",
      };
    }
    last = cut;
    return cut;
  };
}

/** Offsets of a field without the white space around it, as `[start, end]` packed for the hot path by the caller. */
export function trimmedStart(text: string, start: number, end: number): number {
  let at = start;
  while (at < end && isSpace(text.charCodeAt(at))) at++;
  return at;
}

export function trimmedEnd(text: string, start: number, end: number): number {
  let at = end;
  while (at > start && isSpace(text.charCodeAt(at - 1))) at--;
  return at;
}
