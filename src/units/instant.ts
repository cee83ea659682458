/**
 * How a moment is said in the house's own time. Instants are milliseconds since 1970-01-01T00:00Z everywhere inside.
 *
 * `Intl` gives the parts; the text is put together here, since browsers and Node differ in the spaces and commas that
 * their locale data puts between them.
 */
export interface LocalParts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
}

const formats = new Map<string, Intl.DateTimeFormat>();

function formatFor(timeZone: string): Intl.DateTimeFormat {
  const known = formats.get(timeZone);
  if (known) return known;
  const made = new Intl.DateTimeFormat("en-GB", {
    timeZone,
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
  });
  formats.set(timeZone, made);
  return made;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;
const MONTHS_IN_FULL = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

const two = (n: number): string => String(n).padStart(2, "0");

const WEEK = 7 * 24 * 60 * 60_000;
/** From here on no zone that `Intl` knows changes its clock there and back within a week (looked through day by day up to 2037). */
const REGULAR_SINCE = Date.UTC(1973, 0, 4);
const offsets = new Map<string, Map<number, number>>();

/** How far the zone's clock is ahead of UTC when a week since 1970 begins; asked of `Intl` once. */
function offsetAtWeek(week: number, timeZone: string): number {
  const known = offsets.get(timeZone) ?? new Map<number, number>();
  offsets.set(timeZone, known);
  const found = known.get(week);
  if (found !== undefined) return found;
  const { year, month, day, hour, minute } = askParts(week * WEEK, timeZone);
  const offset = Date.UTC(year, month - 1, day, hour, minute) - week * WEEK;
  known.set(week, offset);
  return offset;
}

/** Calendar and clock of `instant` in `timeZone` (an IANA name). */
export function localParts(instant: number, timeZone: string): LocalParts {
  // `Intl` takes some microseconds a moment, and pages say thousands of them: it is asked once a week of them, and of every
  // moment only in weeks in which the clock changes.
  if (!(instant >= REGULAR_SINCE)) return askParts(instant, timeZone);
  const week = Math.floor(instant / WEEK);
  const offset = offsetAtWeek(week, timeZone);
  if (offset !== offsetAtWeek(week + 1, timeZone)) return askParts(instant, timeZone);
  const local = new Date(instant + offset);
  return {
    year: local.getUTCFullYear(),
    month: local.getUTCMonth() + 1,
    day: local.getUTCDate(),
    hour: local.getUTCHours(),
    minute: local.getUTCMinutes(),
  };
}

function askParts(instant: number, timeZone: string): LocalParts {
  const found: Record<string, number> = {};
  for (const { type, value } of formatFor(timeZone).formatToParts(instant)) found[type] = Number(value);
  return {
    year: found.year ?? Number.NaN,
    month: found.month ?? Number.NaN,
    day: found.day ?? Number.NaN,
    hour: found.hour ?? Number.NaN,
    minute: found.minute ?? Number.NaN,
  };
}

/** `2026-10-31`, the local date as it is written in the logs. */
export function printIsoDate(instant: number, timeZone: string): string {
  const { year, month, day } = localParts(instant, timeZone);
  return `${year}-${two(month)}-${two(day)}`;
}

/** `31 Oct 2026`. */
export function printDate(instant: number, timeZone: string): string {
  const { year, month, day } = localParts(instant, timeZone);
  return `${day} ${MONTHS[month - 1]} ${year}`;
}

/** `31 October 2026`. */
export function printDateInFull(instant: number, timeZone: string): string {
  const { year, month, day } = localParts(instant, timeZone);
  return `${day} ${MONTHS_IN_FULL[month - 1]} ${year}`;
}

/** `18:05`. */
export function printClock(instant: number, timeZone: string): string {
  const { hour, minute } = localParts(instant, timeZone);
  return `${two(hour)}:${two(minute)}`;
}

/** `31 Oct 2026, 18:05`. */
export function printMoment(instant: number, timeZone: string): string {
  return `${printDate(instant, timeZone)}, ${printClock(instant, timeZone)}`;
}

/** `October 2026` for `2026-10`. */
export function printMonth(yearMonth: string): string {
  const [year, month] = yearMonth.split("-").map(Number);
  return `${MONTHS_IN_FULL[(month ?? 1) - 1]} ${year}`;
}

/** `Oct 2026` for `2026-10`: for the head of a column. */
export function printShortMonth(yearMonth: string): string {
  const [year, month] = yearMonth.split("-").map(Number);
  return `${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/**
 * The instant at which a local date begins in `timeZone`: 00:00, or the first moment after it where a clock change skips
 * midnight.
 *
 * @param isoDate `2026-10-31`
 */
export function startOfLocalDay(isoDate: string, timeZone: string): number {
  const wanted = Date.parse(`${isoDate}T00:00:00Z`);
  if (!Number.isFinite(wanted))
    throw new RangeError(`startOfLocalDay requires a date such as 2026-10-31; got ${isoDate}`);
  let instant = wanted;
  // Two rounds settle it: the first finds the zone's offset nearby, the second the offset at the answer itself.
  for (let round = 0; round < 2; round += 1) {
    const { year, month, day, hour, minute } = localParts(instant, timeZone);
    instant += wanted - Date.UTC(year, month - 1, day, hour, minute);
  }
  return instant;
}

const DAY = 86_400_000;

/** The day after a date, by the calendar: a day of a clock change is not 24 hours long. @param isoDate `2026-10-31` */
export function nextDay(isoDate: string): string {
  return new Date(Date.parse(`${isoDate}T00:00:00Z`) + DAY).toISOString().slice(0, 10);
}
