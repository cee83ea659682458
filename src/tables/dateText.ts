import type { CellFault } from "./cellFault.ts";
import type { DateOrder } from "./house.ts";

/** A calendar date and a clock as written, as milliseconds of that local clock since 1970-01-01 00:00 on it. */
export interface WrittenTime {
  readonly localMilliseconds: number;
  /** Minutes east of Greenwich where the value says so itself. */
  readonly offsetMinutes: number | null;
}

const MS_A_DAY = 86_400_000;
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function daysIn(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month === 2 && leap ? 29 : (DAYS[month - 1] ?? 0);
}

/** Milliseconds of midnight of a calendar date, NaN where there is no such date. Gregorian, years 1 to 9999. */
function midnight(year: number, month: number, day: number): number {
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month))) return Number.NaN;
  // Days from civil: years begin in March, so that the leap day comes last.
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const ofEra = y - era * 400;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return (era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468) * MS_A_DAY;
}

const two = (text: string, at: number): number => {
  const tens = text.charCodeAt(at) - 48;
  const ones = text.charCodeAt(at + 1) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : Number.NaN;
};

/**
 * The usual form, `2026-03-08 01:30` with `T` or a space and seconds or not, read without cutting strings; NaN for
 * anything else, which {@link writtenTime} then looks at with patience.
 */
export function usualTimeAt(text: string, start: number, end: number): number {
  const length = end - start;
  if (length !== 16 && length !== 19) return Number.NaN;
  if (text.charCodeAt(start + 4) !== 0x2d || text.charCodeAt(start + 7) !== 0x2d) return Number.NaN;
  const between = text.charCodeAt(start + 10);
  if ((between !== 0x20 && between !== 0x54) || text.charCodeAt(start + 13) !== 0x3a) return Number.NaN;
  const hour = two(text, start + 11);
  const minute = two(text, start + 14);
  let second = 0;
  if (length === 19) {
    if (text.charCodeAt(start + 16) !== 0x3a) return Number.NaN;
    second = two(text, start + 17);
  }
  if (!(hour < 24 && minute < 60 && second < 60)) return Number.NaN;
  const year = two(text, start) * 100 + two(text, start + 2);
  return midnight(year, two(text, start + 5), two(text, start + 8)) + ((hour * 60 + minute) * 60 + second) * 1000;
}

const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;
const PARTS = /^(\d{1,4})([./-])(\d{1,2})\2(\d{1,4})$/;
const CLOCK =
  /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,3}))?)?\s*([ap])?\.?(?:m\.?)?\s*(z|[+\-\u2212]\d{2}(?::?\d{2})?)?$/i;

const fault = (rule: string, message: string, hint: string): CellFault => ({ rule, message, hint });
const wrongForm = (text: string): CellFault =>
  fault(
    "not-a-date",
    `“${text}” is not a date as this file writes them.`,
    "Write dates as 2026-03-08, or declare date_order in house.toml.",
  );

function noSuchDate(text: string): CellFault {
  return fault("no-such-date", `There is no such date as “${text}”.`, "Look the day and month up again.");
}

/** A calendar date as milliseconds at UTC midnight, ISO or in the declared order; what could be two dates is refused. */
export function writtenDate(text: string, order: DateOrder): number | CellFault {
  const iso = ISO.exec(text);
  if (iso) {
    const at = midnight(Number(iso[1]), Number(iso[2]), Number(iso[3]));
    return Number.isNaN(at) ? noSuchDate(text) : at;
  }
  if (/^\d{5}(\.\d+)?$/.test(text)) {
    return fault(
      "spreadsheet-date",
      `“${text}” looks like a spreadsheet's day number.`,
      "Format the column as a date, 2026-03-08, and export again.",
    );
  }
  const parts = PARTS.exec(text);
  if (!parts) return wrongForm(text);
  const [first = "", , second = "", third = ""] = parts.slice(1);
  const [y, m, d] =
    first.length === 4 ? [first, second, third] : order === "dmy" ? [third, second, first] : [third, first, second];
  if (first.length !== 4) {
    if (third.length !== 4) {
      return fault("year-cut-short", `The year in “${text}” is not four digits long.`, "Write the year in full.");
    }
    if (order === "ymd") {
      return fault(
        "ambiguous-date",
        `“${text}” does not say which is the day and which the month.`,
        'Declare date_order = "dmy" or "mdy" in house.toml, or write 2026-03-08.',
      );
    }
  }
  if ((d as string).length > 2) return wrongForm(text);
  const at = midnight(Number(y), Number(m), Number(d));
  return Number.isNaN(at) ? noSuchDate(text) : at;
}

/** A date and clock, `2026-03-08 01:30`, with seconds, am or pm, an offset or Z where it has one. */
export function writtenTime(text: string, order: DateOrder): WrittenTime | CellFault {
  const gap = /[T\s,]+/iu.exec(text);
  if (!gap) {
    const date = writtenDate(text, order);
    if (typeof date !== "number") return date;
    return fault("time-missing", `“${text}” has a date but no time of day.`, "Write both: 2026-03-08 01:30");
  }
  const date = writtenDate(text.slice(0, gap.index), order);
  if (typeof date !== "number") return date;
  const clock = CLOCK.exec(text.slice(gap.index + gap[0].length).trim());
  if (!clock) {
    return fault("not-a-time", `The time of day in “${text}” cannot be read.`, "Write it as 01:30 or 01:30:15.");
  }
  const [, h, min, s = "0", part = "", half, zone] = clock;
  let hour = Number(h);
  const noSuchTime = fault("not-a-time", `There is no such time of day as in “${text}”.`, "Hours run from 00 to 23.");
  if (half) {
    if (hour < 1 || hour > 12) return noSuchTime;
    hour = (hour % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  }
  if (hour > 23 || Number(min) > 59 || Number(s) > 59) return noSuchTime;
  const localMilliseconds = date + ((hour * 60 + Number(min)) * 60 + Number(s)) * 1000 + Number(part.padEnd(3, "0"));
  if (!zone) return { localMilliseconds, offsetMinutes: null };
  if (zone.toLowerCase() === "z") return { localMilliseconds, offsetMinutes: 0 };
  const hours = Number(zone.slice(1, 3));
  const minutes = Number(zone.slice(3).replace(":", "") || "0");
  if (hours > 14 || minutes > 59) {
    return fault("not-a-time", `There is no such offset as in “${text}”.`, "Offsets look like +02:00.");
  }
  return { localMilliseconds, offsetMinutes: (zone.startsWith("+") ? 1 : -1) * (hours * 60 + minutes) };
}
