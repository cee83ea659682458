import { numbersOf, textsOf } from "./rules/columns.ts";
import type { Table } from "./table.ts";

/** From when until when a load lay in a kiln, milliseconds UTC; without an end where none is known. */
export interface LoadSpan {
  readonly from: number;
  readonly to: number;
}

/**
 * The loads of each kiln as kilning.csv has them. One under way ends where the next load of its kiln begins, or never.
 * Rows that share a load's name are one load.
 */
export function kilnLoadSpans(kilning: Table | undefined): ReadonlyMap<string, readonly LoadSpan[]> {
  const byKiln = new Map<string, Map<string, { from: number; to: number }>>();
  if (!kilning) return new Map();
  const [kilns, names] = [textsOf(kilning, "kiln"), textsOf(kilning, "load")];
  const [loaded, unloaded] = [numbersOf(kilning, "loaded_at"), numbersOf(kilning, "unloaded_at")];
  for (let row = 0; row < kilning.rowCount; row += 1) {
    const [kiln, from, to] = [kilns[row], loaded[row] as number, unloaded[row] as number];
    if (!kiln || Number.isNaN(from)) continue;
    const loads = byKiln.get(kiln) ?? new Map<string, { from: number; to: number }>();
    byKiln.set(kiln, loads);
    const key = JSON.stringify(names[row] ?? from);
    const known = loads.get(key) ?? { from, to: Number.NEGATIVE_INFINITY };
    known.from = Math.min(known.from, from);
    if (!Number.isNaN(to)) known.to = Math.max(known.to, to);
    loads.set(key, known);
  }
  return new Map(
    [...byKiln].map(([kiln, loads]) => {
      const starts = [...loads.values()].map(({ from }) => from).sort((a, b) => a - b);
      const nextAfter = (moment: number): number => starts.find((start) => start > moment) ?? Number.POSITIVE_INFINITY;
      return [
        kiln,
        [...loads.values()].map(({ from, to }) => ({ from, to: Number.isFinite(to) ? to : nextAfter(from) })),
      ];
    }),
  );
}

/** The latest moment up to `moment` at which no load lay in the kiln, so that no load's readings are cut in two. */
export function cutBetweenLoads(spans: readonly LoadSpan[], moment: number): number {
  let cut = moment;
  for (;;) {
    const open = spans.reduce(
      (earliest, { from, to }) => (from < cut && to >= cut ? Math.min(earliest, from) : earliest),
      cut,
    );
    if (open === cut) return cut;
    cut = open;
  }
}
