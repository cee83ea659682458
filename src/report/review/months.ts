import { localParts, startOfLocalDay } from "../../units/instant.ts";
import type { RunRow } from "../runRow.ts";

/** A month of a house's calendar. */
export interface Month {
  /** `2026-10`. */
  readonly name: string;
  /** Its first moment, and the first after it. */
  readonly from: number;
  readonly before: number;
}

const nameOf = (year: number, month: number): string => `${year}-${String(month).padStart(2, "0")}`;

const moved = (name: string, by: number): string => {
  const [year = 0, month = 1] = name.split("-").map(Number);
  const count = year * 12 + month - 1 + by;
  return nameOf(Math.floor(count / 12), (count % 12) + 1);
};

/** `2026-09` for `2026-10`. */
export const monthBefore = (name: string): string => moved(name, -1);
/** `2025-10` for `2026-10`. */
export const sameMonthYearBefore = (name: string): string => moved(name, -12);

/** @param name `2026-10` */
export function monthOf(name: string, timeZone: string): Month {
  return {
    name,
    from: startOfLocalDay(`${name}-01`, timeZone),
    before: startOfLocalDay(`${moved(name, 1)}-01`, timeZone),
  };
}

/** Every month from the first batch unloaded to the last, latest first; months without a batch are among them. */
export function monthsOf(runs: readonly RunRow[], timeZone: string): readonly Month[] {
  const moments = runs.flatMap(({ unloadedAt }) => unloadedAt ?? []);
  if (moments.length === 0) return [];
  const nameAt = (instant: number): string => {
    const { year, month } = localParts(instant, timeZone);
    return nameOf(year, month);
  };
  const first = nameAt(moments.reduce((least, moment) => Math.min(least, moment)));
  const months: Month[] = [];
  let name = nameAt(moments.reduce((most, moment) => Math.max(most, moment)));
  for (; name >= first; name = monthBefore(name)) months.push(monthOf(name, timeZone));
  return months;
}
