import type { LoadRow } from "../../loadRow.ts";

const DAY = 86_400_000;
const WEEK = 7 * DAY;

/** How many loads the house has fired in spells of so many weeks. */
export interface Pace {
  readonly spells: number;
  /** Loads of the middle spell. */
  readonly usual: number;
}

/**
 * The house's own pace: spells of `weeks` weeks that end with the logs, one a week back over at most two years, so that a
 * house that fires two nights in three is not planned as one that fires every night. Null for less than three spells.
 */
export function paceOf(loads: readonly LoadRow[], weeks: number, asOf: number): Pace | null {
  const first = loads[0]?.loadedAt;
  if (first === undefined) return null;
  const counts: number[] = [];
  for (let end = asOf; end - weeks * WEEK >= Math.max(first, asOf - 730 * DAY); end -= WEEK) {
    counts.push(loads.filter(({ loadedAt }) => loadedAt >= end - weeks * WEEK && loadedAt < end).length);
  }
  if (counts.length < 3) return null;
  const sorted = counts.toSorted((a, b) => a - b);
  return {
    spells: counts.length,
    usual: sorted[Math.floor(sorted.length / 2)] ?? 0,
  };
}
