import { monthsOn, nameOfMonth, startOfMonth } from "../../units/calendarMonth.ts";
import { localParts } from "../../units/instant.ts";
import type { RunRow } from "../runRow.ts";

/** A month of a house's calendar. */
export interface Month {
  /** `2026-10`. */
  readonly name: string;
  /** Its first moment, and the first after it. */
  readonly from: number;
  readonly before: number;
}

/** `2026-09` for `2026-10`. */
export const monthBefore = (name: string): string => monthsOn(name, -1);
/** `2025-10` for `2026-10`. */
export const sameMonthYearBefore = (name: string): string => monthsOn(name, -12);

/** @param name `2026-10` */
export const monthOf = (name: string, timeZone: string): Month => ({
  name,
  from: startOfMonth(name, timeZone),
  before: startOfMonth(monthsOn(name, 1), timeZone),
});

/**
 * Every month from the first batch unloaded to the last, latest first; months without a batch are among them.
 *
 * @param lost batches whose kiln row was set aside: a month that holds nothing else is a month of the logs all the same
 */
export function monthsOf(runs: readonly RunRow[], timeZone: string, lost: readonly RunRow[] = []): readonly Month[] {
  const moments = runs.flatMap(({ unloadedAt }) => unloadedAt ?? []);
  if (moments.length === 0) return [];
  const nameAt = (instant: number): string => {
    const { year, month } = localParts(instant, timeZone);
    return nameOfMonth(year, month);
  };
  const first = nameAt(moments.reduce((least, moment) => Math.min(least, moment)));
  const months: Month[] = [];
  const ends = [...moments, ...lost.flatMap(({ germinationEndedAt }) => germinationEndedAt ?? [])];
  let name = nameAt(ends.reduce((most, moment) => Math.max(most, moment)));
  for (; name >= first; name = monthBefore(name)) months.push(monthOf(name, timeZone));
  return months;
}
