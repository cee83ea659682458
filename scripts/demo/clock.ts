import { localParts } from "../../src/units/instant.ts";

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

/** The invented house keeps this zone's time; its climate is invented too and is not that of any place in the zone. */
export const TIME_ZONE = "Europe/Tallinn";

const two = (n: number): string => String(n).padStart(2, "0");

const offsets = new Map<number, number>();

/** Local time less UTC, in ms, in the hour that `instant` falls in: zones change on whole hours here. */
function zoneOffset(instant: number): number {
  const hour = Math.floor(instant / HOUR);
  const known = offsets.get(hour);
  if (known !== undefined) return known;
  const p = localParts(hour * HOUR, TIME_ZONE);
  const offset = Date.UTC(p.year, p.month - 1, p.day, p.hour, p.minute) - hour * HOUR;
  offsets.set(hour, offset);
  return offset;
}

/** The instant at which the house's clock shows `hour:minute` on this date (in the doubled hour: the first time). */
export function instantAt(date: string, hour: number, minute = 0): number {
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  const asUtc = Date.UTC(year, month - 1, day, hour, minute);
  const first = asUtc - zoneOffset(asUtc - 12 * HOUR);
  return first + zoneOffset(first) === asUtc ? first : asUtc - zoneOffset(asUtc + 12 * HOUR);
}

function textOf(milliseconds: number): string {
  const d = new Date(milliseconds);
  const date = `${d.getUTCFullYear()}-${two(d.getUTCMonth() + 1)}-${two(d.getUTCDate())}`;
  return `${date} ${two(d.getUTCHours())}:${two(d.getUTCMinutes())}`;
}

/** `2026-10-31 17:45` as the house's clock shows it. */
export function localText(instant: number): string {
  return textOf(instant + zoneOffset(instant));
}

/** `2026-10-31` by the house's calendar. */
export function localDate(instant: number): string {
  return localText(instant).slice(0, 10);
}

/** `2026-10-31 15:45`, UTC. */
export const utcText = textOf;

/** Hour of the local day with its fraction, 0 to 24. */
export function localHour(instant: number): number {
  return ((((instant + zoneOffset(instant)) % DAY) + DAY) % DAY) / HOUR;
}

/** The calendar date `days` later. */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY).toISOString().slice(0, 10);
}

/** To the nearest five minutes, as a person writes a time down. */
export function toFiveMinutes(instant: number): number {
  return Math.round(instant / (5 * MINUTE)) * 5 * MINUTE;
}
