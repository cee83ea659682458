import { localParts, printClock } from "../units/instant.ts";
import type { Tick } from "./ticks.ts";

const HOUR = 3_600_000;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;
const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"] as const;

/** The instant at which a local clock shows midnight of that date (the first such, or the first after a skipped one). */
export function localMidnight(year: number, month: number, day: number, timeZone: string): number {
  const wanted = Date.UTC(year, month - 1, day);
  const shownAt = (instant: number): number => {
    const { year: y, month: m, day: d, hour, minute } = localParts(instant, timeZone);
    return Date.UTC(y, m - 1, d, hour, minute);
  };
  let instant = wanted;
  // Twice: the offset at the guess may differ from the offset at midnight by a clock change.
  for (let i = 0; i < 2; i++) instant += wanted - shownAt(instant);
  return instant;
}

/** First days of months between two instants, thinned to about `count`; the year stands under January and the first. */
export function monthTicks(from: number, to: number, count: number, timeZone: string): Tick[] {
  const first = localParts(from, timeZone);
  const last = localParts(to, timeZone);
  const months = (last.year - first.year) * 12 + last.month - first.month;
  const step = [1, 2, 3, 6, 12, 24, 60, 120].find((every) => months / every <= count) ?? 120;
  const ticks: Tick[] = [];
  let yearShown = 0;
  for (let n = 0; n <= months; n++) {
    const serial = first.year * 12 + first.month - 1 + n;
    if (serial % step !== 0) continue;
    const year = Math.floor(serial / 12);
    const month = serial % 12;
    const at = localMidnight(year, month + 1, 1, timeZone);
    if (at < from || at > to) continue;
    if (step >= 12) ticks.push({ at, label: String(year) });
    else {
      ticks.push({ at, label: MONTHS[month] ?? "", ...(year !== yearShown ? { under: String(year) } : {}) });
      yearShown = year;
    }
  }
  return ticks;
}

/** `Sat 31 Oct`. */
export function printDay(instant: number, timeZone: string): string {
  const { year, month, day } = localParts(instant, timeZone);
  return `${DAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]} ${day} ${MONTHS[month - 1]}`;
}

/** Local midnights between two instants, every so many days that about `count` are left. */
export function dayTicks(from: number, to: number, count: number, timeZone: string): Tick[] {
  const days = Math.max(1, Math.ceil((to - from) / (24 * HOUR)));
  const step = [1, 2, 3, 5, 7, 14, 28].find((every) => days / every <= count) ?? 28;
  const first = localParts(from, timeZone);
  const ticks: Tick[] = [];
  for (let n = 0; n <= days + 1; n += step) {
    const at = localMidnight(first.year, first.month, first.day + n, timeZone);
    if (at >= from && at <= to) ticks.push({ at, label: printDay(at, timeZone) });
  }
  return ticks;
}

/** Whole local hours between two instants, at clock times that divide the day; the day stands under midnight. */
export function clockTicks(from: number, to: number, count: number, timeZone: string): Tick[] {
  const hours = (to - from) / HOUR;
  const step = [1, 2, 3, 4, 6, 12, 24].find((every) => hours / every <= count) ?? 24;
  const ticks: Tick[] = [];
  // Zones may stand a quarter of an hour off the hour, so quarters are walked.
  const start = Math.ceil(from / (HOUR / 4)) * (HOUR / 4);
  for (let at = start; at <= to; at += HOUR / 4) {
    const { hour, minute } = localParts(at, timeZone);
    if (minute !== 0 || hour % step !== 0) continue;
    if (ticks.at(-1)?.label === printClock(at, timeZone)) continue;
    ticks.push({ at, label: printClock(at, timeZone), ...(hour === 0 ? { under: printDay(at, timeZone) } : {}) });
  }
  return ticks;
}
