import { printDate } from "../../units/instant.ts";
import type { EventRow } from "../eventRow.ts";
import type { MeasuredRun } from "./measuredRuns.ts";

const DAY = 86_400_000;
/** A cause shows in the batches after it; what was logged in the fortnight before a signal's first batch may be one. */
const DAYS_BEFORE = 14;
/** A cause is often found, mended and written down only after the batches that show it. */
const DAYS_AFTER = 14;

/**
 * What the logs say about the days of a signal, in words: events, a grain lot or a kiln that the batches before did not
 * have. Beside it, not because of it: the page says no more.
 */
export function besideSignal(
  runs: readonly MeasuredRun[],
  from: number,
  to: number,
  events: readonly EventRow[],
): readonly string[] {
  const first = runs[from];
  const last = runs[to];
  if (first === undefined || last === undefined) return [];
  const start = (first.row.steepStartedAt ?? first.at) - DAYS_BEFORE * DAY;
  const logged = events
    .filter(({ kind, on }) => kind !== "new-baseline" && on >= start && on <= last.at + DAYS_AFTER * DAY)
    .map(({ on, what }) => `${printDate(on, "UTC")}: ${what}`);
  const before = latestBefore(runs, from, first.variety);
  const changed = (name: string, now: string | null, then: string | null | undefined): string[] =>
    now !== null && then != null && now !== then ? [`${name} ${now}, before it ${then}`] : [];
  return [
    ...logged,
    ...changed(`${first.variety} from lot`, first.lot, before?.lot),
    ...changed("kiln", first.kiln, before?.kiln),
  ];
}

function latestBefore(runs: readonly MeasuredRun[], index: number, variety: string): MeasuredRun | undefined {
  let at = index - 1;
  while (at >= 0 && runs[at]?.variety !== variety) at -= 1;
  return runs[at];
}
