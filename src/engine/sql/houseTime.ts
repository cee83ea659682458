import { type ClockChange, clockChanges } from "../../tables/clockChanges.ts";
import { quoteInstant } from "../quote.ts";

/** The years that a log may speak of (`tables/cells.ts`). */
const FIRST = Date.UTC(1990, 0, 1);
const LAST = Date.UTC(2100, 0, 1);

/** The offset as nested cases, halved at each step, so that a row passes eight of them and not two hundred. */
function offsetSql(changes: readonly ClockChange[]): string {
  const [only] = changes;
  if (only !== undefined && changes.length === 1) return String(only.offsetMinutes);
  const half = Math.ceil(changes.length / 2);
  const later = changes.slice(half);
  const [first] = later;
  if (first === undefined) throw new RangeError("offsetSql requires at least one entry; got none");
  return `CASE WHEN t < ${quoteInstant(first.from)} THEN ${offsetSql(changes.slice(0, half))} ELSE ${offsetSql(later)} END`;
}

/**
 * `house_time(t)`: a UTC timestamp as the house's clock showed it, for questions about days, weeks and hours of the day.
 * The engine's own time zones are an extension that would have to be fetched from another host.
 */
export const houseTime = (timeZone: string): string =>
  `CREATE OR REPLACE MACRO house_time(t) AS t + to_minutes(${offsetSql(clockChanges(timeZone, FIRST, LAST))})`;
