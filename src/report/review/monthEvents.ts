import type { ChangesResult } from "../changesResult.ts";
import type { EventRow } from "../eventRow.ts";
import type { MonthEvent } from "../reviewResult.ts";
import type { Month } from "./months.ts";

const isSame = (a: EventRow, b: EventRow): boolean =>
  a.on === b.on && a.kind === b.kind && a.scope === b.scope && a.what === b.what;

/** Helped, harmed or moved something comes before what cannot be told. */
const TELLS = ["helped", "hurt", "moved", "no difference", "cannot be told"] as const;

/**
 * What was logged about the house in a month, each change with what it came to by the end of all logs: a sheet that is read
 * again later says more than it could at its month's end.
 *
 * @param month an event's date is a local one, kept as UTC midnight: it is compared by name
 */
export function monthEvents(
  events: readonly EventRow[],
  { changes }: ChangesResult,
  { name }: Pick<Month, "name">,
): readonly MonthEvent[] {
  return events
    .filter(({ on }) => new Date(on).toISOString().startsWith(name))
    .map((event) => {
      const change = changes.find((candidate) => isSame(candidate.event, event));
      const effect = change?.effects.toSorted((a, b) => TELLS.indexOf(a.verdict) - TELLS.indexOf(b.verdict))[0];
      return {
        event,
        changeId: change?.id ?? null,
        effect: effect === undefined ? null : { ...effect, points: [] },
      };
    });
}
