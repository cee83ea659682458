import type { LoadRow } from "../../loadRow.ts";

const DAY = 86_400_000;
const WEEK = 7 * DAY;
/** So far back the house worked as it does now. */
const YEARS_BACK = 2;
/** Orders that fall due later than this are not planned by the pace of a spell: too few spells would be left. */
const LONGEST = 13 * WEEK;
const FEWEST_SPELLS = 3;

export interface Pressed {
  /** The day by which each load that has yet to be steeped must be off the kiln: its first moment, UTC. */
  readonly dueAt: readonly number[];
  /** Loads whose batches are under way: they come first. */
  readonly ahead: number;
  /** From steep to bag, as it usually goes: no new load comes sooner. */
  readonly milliseconds: number;
}

/** How the house’s own past would have done. */
export interface Lateness {
  readonly spells: number;
  /** Spells in which one load or another would have come too late. */
  readonly late: number;
}

/**
 * Would the house’s pace of the past have met these days? From every week of the last two years on, the loads that it then took
 * off its kilns are held against what is wanted now: those under way first, then the others as they fall due. Null without
 * three such spells.
 *
 * @param loads of the whole house
 */
export function latenessOf(
  loads: readonly LoadRow[],
  { dueAt, ahead, milliseconds }: Pressed,
  asOf: number,
): Lateness | null {
  const [first] = loads;
  if (first === undefined) return null;
  const wanted = dueAt.map((due) => due + DAY - asOf).filter((left) => left <= LONGEST);
  wanted.sort((a, b) => a - b);
  const unloaded = loads.flatMap(({ unloadedAt }) => unloadedAt ?? []).sort((a, b) => a - b);
  const span = Math.max(4 * WEEK, wanted.at(-1) ?? 0);
  let [spells, late] = [0, 0];
  for (let from = asOf - span; from >= Math.max(first.loadedAt, asOf - YEARS_BACK * 365 * DAY); from -= WEEK) {
    const came = unloaded.filter((at) => at > from).slice(ahead);
    const made = came.filter((at) => at >= from + milliseconds);
    spells += 1;
    if (wanted.some((left, load) => (made[load] ?? Number.POSITIVE_INFINITY) > from + left)) late += 1;
  }
  return spells < FEWEST_SPELLS ? null : { spells, late };
}
