import type { DoubledTime } from "./cells.ts";

/** A doubled time with the row in which it stands. */
export interface PendingTime extends DoubledTime {
  readonly row: number;
}

const MS_AN_HOUR = 3_600_000;

function settleStretch(
  stretch: readonly PendingTime[],
  before: number | null,
  after: number | null,
  settled: Map<number, number>,
): void {
  const drops: number[] = [];
  for (let i = 1; i < stretch.length; i++) {
    if ((stretch[i] as PendingTime).earlier < (stretch[i - 1] as PendingTime).earlier) drops.push(i);
  }
  // Hourly logs show the doubled hour as the same time twice.
  if (stretch.length === 2 && stretch[0]?.earlier === stretch[1]?.earlier) drops.push(1);
  const first = stretch[0] as PendingTime;
  const last = stretch.at(-1) as PendingTime;
  let turn: number | null = null;
  if (drops.length === 1) turn = drops[0] as number;
  else if (drops.length === 0 && before !== null && before > first.earlier) turn = 0;
  else if (drops.length === 0 && after !== null && after < last.later) turn = stretch.length;
  if (turn === null) return;
  const instants = stretch.map(({ earlier, later }, i) => (i < (turn as number) ? earlier : later));
  if ((before !== null && before > (instants[0] as number)) || (after !== null && after < (instants.at(-1) as number)))
    return;
  for (const [i, { row }] of stretch.entries()) settled.set(row, instants[i] as number);
}

/**
 * Settles doubled times in a series of readings by their order: where the clock falls back inside a stretch, what
 * stands before is the first pass and what follows the second. A stretch that its neighbours do not settle stays out.
 *
 * @param times instants of the series in file order, NaN where a time is pending
 * @param rows row numbers of the series, as long as `times`
 */
export function settleSeries(
  times: ArrayLike<number>,
  rows: ArrayLike<number>,
  pending: ReadonlyMap<number, PendingTime>,
): ReadonlyMap<number, number> {
  const settled = new Map<number, number>();
  const count = rows.length;
  const isPending = (index: number): boolean => pending.has(rows[index] as number);
  let first = 0;
  while (first < count && isPending(first)) first++;
  let last = count - 1;
  while (last > first && isPending(last)) last--;
  // Some loggers write the newest line first.
  const newestFirst = first < last && (times[first] as number) > (times[last] as number);
  const place = (index: number): number => (newestFirst ? count - 1 - index : index);
  const known = (index: number): number | null =>
    index < 0 || index >= count || isPending(place(index)) ? null : (times[place(index)] as number);
  for (let i = 0; i < count; ) {
    const start = pending.get(rows[place(i)] as number);
    if (!start) {
      i++;
      continue;
    }
    const stretch = [start];
    let next = i + 1;
    for (; next < count; next++) {
      const more = pending.get(rows[place(next)] as number);
      // Two different autumns are two stretches.
      if (!more || Math.abs(more.earlier - start.earlier) > 2 * MS_AN_HOUR) break;
      stretch.push(more);
    }
    settleStretch(stretch, known(i - 1), known(next), settled);
    i = next;
  }
  return settled;
}

/**
 * Settles doubled times among the instants of one row, which follow each other in the order of the stage: a choice
 * stands when every way of keeping that order agrees on it; null where it stays open.
 *
 * @param instants candidates of each instant of the row, one, two, or none where nothing was logged
 */
export function settleRow(instants: readonly (readonly number[])[]): readonly (number | null)[] {
  let ways: number[][] = [[]];
  for (const candidates of instants) {
    if (candidates.length === 0) {
      ways = ways.map((way) => [...way, Number.NaN]);
      continue;
    }
    ways = ways.flatMap((way) =>
      candidates
        .filter((candidate) => way.every((earlier) => Number.isNaN(earlier) || earlier <= candidate))
        .map((candidate) => [...way, candidate]),
    );
  }
  return instants.map((_, index) => {
    const chosen = new Set(ways.map((way) => way[index] as number));
    return chosen.size === 1 ? ([...chosen][0] as number) : null;
  });
}
