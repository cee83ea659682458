import type { ChangeEffect, ChangeResult, ChangeVerdict } from "../changesResult.ts";
import type { EventRow } from "../eventRow.ts";
import type { MonthEvent } from "../reviewResult.ts";
import { monthBefore } from "./months.ts";

/** What helped, harmed or moved comes first; else what is nearest to the scope. */
const TELLS: readonly ChangeVerdict[] = ["helped", "hurt", "moved"];

const placeOf = ({ verdict }: ChangeEffect): number =>
  TELLS.includes(verdict) ? TELLS.indexOf(verdict) : TELLS.length;

/** After these the house works otherwise than before; an incident passes, and a new baseline is a line in a book. */
const SHOWS: ReadonlySet<string> = new Set(["change", "repair", "calibration"]);

/** So many months later it is told what a change came to: a month’s end is mostly too soon. */
const MONTHS_WATCHED = 2;

/** What was logged in a month, and what was changed or repaired in the months before it, as far as it can be compared. */
export interface MonthEvents {
  readonly events: readonly MonthEvent[];
  readonly earlier: readonly MonthEvent[];
}

/**
 * What was logged about the house in a month and shortly before, each change, repair and calibration with what it came to by
 * the month’s end.
 *
 * @param events up to the month’s end, earliest first; their dates are local ones, kept as UTC midnight, and compared by name
 * @param judge what these events came to by the month’s end
 * @param ids of the changes that the page about changes shows
 */
export function monthEvents(
  events: readonly EventRow[],
  month: string,
  judge: (judged: readonly EventRow[]) => readonly ChangeResult[],
  ids: ReadonlyMap<EventRow, string>,
): MonthEvents {
  const inMonth = (name: string): readonly EventRow[] =>
    events.filter(({ on }) => new Date(on).toISOString().startsWith(name));
  const names = [month];
  for (let back = 0; back < MONTHS_WATCHED; back += 1) names.unshift(monthBefore(names[0] ?? month));
  const judged = names.flatMap(inMonth).filter(({ kind }) => SHOWS.has(kind));
  const results = new Map(judge(judged).map((result) => [result.event, result]));
  const told = (event: EventRow): MonthEvent => ({
    event,
    changeId: ids.get(event) ?? null,
    ...shown(results.get(event)),
  });
  return {
    events: inMonth(month).map(told),
    earlier: names
      .slice(0, -1)
      .flatMap(inMonth)
      .filter((event) => (results.get(event)?.effects.length ?? 0) > 0)
      .map(told),
  };
}

function shown(result: ChangeResult | undefined): Pick<MonthEvent, "effect" | "tooLittle"> {
  const effect = result?.effects.toSorted((a, b) => placeOf(a) - placeOf(b))[0];
  if (effect !== undefined) return { effect: { ...effect, points: [] }, tooLittle: null };
  // Of a repair or calibration that could not show in what is logged there is nothing to say.
  const isAsked = result !== undefined && (result.event.kind === "change" || result.lacking.length > 0);
  return { effect: null, tooLittle: isAsked ? result.tooLittle : null };
}
