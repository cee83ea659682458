import { Temporal } from "temporal-polyfill";

/** From this instant on the house's clock is so many minutes ahead of UTC. */
export interface ClockChange {
  /** Milliseconds since 1970 in UTC; minus infinity for what holds at the very first. */
  readonly from: number;
  readonly offsetMinutes: number;
}

/**
 * Every change of a zone's clock between two instants, in order; the first entry says what held before any of them.
 *
 * @param timeZone IANA name
 */
export function clockChanges(timeZone: string, from: number, to: number): readonly ClockChange[] {
  const minutesAt = (instant: number): number =>
    Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(timeZone).offsetNanoseconds / 6e10;
  const changes: ClockChange[] = [{ from: Number.NEGATIVE_INFINITY, offsetMinutes: minutesAt(from) }];
  let at = Temporal.Instant.fromEpochMilliseconds(from).toZonedDateTimeISO(timeZone);
  for (;;) {
    const next = at.getTimeZoneTransition("next");
    if (next === null || next.epochMilliseconds > to) return changes;
    changes.push({ from: next.epochMilliseconds, offsetMinutes: next.offsetNanoseconds / 6e10 });
    at = next;
  }
}
