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
  const order = Array.from(rows, (row, index) => ({ row, at: times[index] as number }));
  const known = order.filter(({ row }) => !pending.has(row));
  const first = known[0]?.at;
  const last = known.at(-1)?.at;
  // Some loggers write the newest line first.
  if (first !== undefined && last !== undefined && first > last) order.reverse();
  for (let i = 0; i < order.length; ) {
    const start = pending.get((order[i] as { row: number }).row);
    if (!start) {
      i++;
      continue;
    }
    const stretch = [start];
    let next = i + 1;
    for (; next < order.length; next++) {
      const more = pending.get((order[next] as { row: number }).row);
      // Two different autumns are two stretches.
      if (!more || Math.abs(more.earlier - start.earlier) > 2 * MS_AN_HOUR) break;
      stretch.push(more);
    }
    const before = i > 0 ? (order[i - 1] as { row: number; at: number }) : null;
    const after = next < order.length ? (order[next] as { row: number; at: number }) : null;
    settleStretch(
      stretch,
      before === null || pending.has(before.row) ? null : before.at,
      after === null || pending.has(after.row) ? null : after.at,
      settled,
    );
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
