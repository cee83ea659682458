import { printIsoDate, startOfLocalDay } from "../../units/instant.ts";
import type { EventRow } from "../eventRow.ts";

const DAY = 86_400_000;
const YEAR = 365.25 * DAY;
/** What was mended had begun on a day that nobody knows: the last two months before a repair are taken for the trouble. */
const TROUBLE = 61 * DAY;

/** Kinds of events after which the house works otherwise than before. An incident passes; a new baseline is a line in a book. */
const LASTING: ReadonlySet<string> = new Set(["change", "repair", "calibration"]);

export const isLasting = ({ kind }: EventRow): boolean => LASTING.has(kind);

/** The moment from which an event holds: the beginning of its day in the house's own time. */
export const beginningOf = ({ on }: EventRow, timeZone: string): number =>
  startOfLocalDay(printIsoDate(on, "UTC"), timeZone);

/** What one change is compared over. */
export interface ChangeWindow {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** The events of the same scope that bound it; null where a year, or the logs' own end, does. */
  readonly before: EventRow | null;
  readonly after: EventRow | null;
}

/** From the lasting event of the same scope before to the one after, at most a year each way; before a repair two months. */
export function changeWindow(change: EventRow, events: readonly EventRow[], timeZone: string): ChangeWindow {
  const at = beginningOf(change, timeZone);
  const others = events.filter((event) => event.scope === change.scope && isLasting(event) && event.on !== change.on);
  const dated = others.map((event) => ({ event, begins: beginningOf(event, timeZone) }));
  const before = dated.filter(({ begins }) => begins < at).sort((a, b) => b.begins - a.begins)[0];
  const after = dated.filter(({ begins }) => begins > at).sort((a, b) => a.begins - b.begins)[0];
  const [from, to] = [at - (change.kind === "change" ? YEAR : TROUBLE), at + YEAR];
  return {
    at,
    from: Math.max(from, before?.begins ?? from),
    to: Math.min(to, after?.begins ?? to),
    before: before !== undefined && before.begins > from ? before.event : null,
    after: after !== undefined && after.begins < to ? after.event : null,
  };
}
