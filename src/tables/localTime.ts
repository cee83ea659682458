import { Temporal } from "temporal-polyfill";

const MS_AN_HOUR = 3_600_000;

/** Turns times of a house's own clock into instants. */
export interface LocalTime {
  /**
   * Milliseconds that local time is ahead of UTC throughout a local hour (hours since 1970 on the house's clock); NaN
   * for the few hours that a clock change touches, for which {@link instantsOf} must be asked.
   */
  offsetInHour(localHour: number): number;
  /** The instants at which the house's clock shows this time: one; none in a missing hour; two in a doubled one, earlier first. */
  instantsOf(localMilliseconds: number): readonly number[];
}

/**
 * Local time of an IANA zone. Offsets are looked up once a day, on days of a clock change once an hour, and kept, so
 * that a year of readings costs some hundred look-ups.
 *
 * @throws {RangeError} when the zone is not known
 */
export function localTimeOf(timeZone: string): LocalTime {
  if (!isTimeZone(timeZone)) throw new RangeError(`localTimeOf requires an IANA time zone; got ${timeZone}`);
  const offsets = new Map<number, number>();
  let lastHour = Number.NaN;
  let lastOffset = Number.NaN;

  function instantsOf(localMilliseconds: number): readonly number[] {
    const written = Temporal.Instant.fromEpochMilliseconds(localMilliseconds)
      .toZonedDateTimeISO("UTC")
      .toPlainDateTime();
    try {
      return [written.toZonedDateTime(timeZone, { disambiguation: "reject" }).epochMilliseconds];
    } catch {
      const earlier = written.toZonedDateTime(timeZone, { disambiguation: "earlier" });
      if (!earlier.toPlainDateTime().equals(written)) return [];
      return [
        earlier.epochMilliseconds,
        written.toZonedDateTime(timeZone, { disambiguation: "later" }).epochMilliseconds,
      ];
    }
  }

  /** The one offset that holds from one local time through another; NaN where a clock change touches them. */
  function offsetThrough(from: number, to: number): number {
    const atStart = instantsOf(from);
    const atEnd = instantsOf(to);
    if (atStart.length !== 1 || atEnd.length !== 1) return Number.NaN;
    const offset = from - (atStart[0] as number);
    return to - (atEnd[0] as number) === offset ? offset : Number.NaN;
  }

  function offsetInHour(localHour: number): number {
    if (localHour === lastHour) return lastOffset;
    let offset = offsets.get(localHour);
    if (offset === undefined) {
      // No clock has ever been changed twice in one day, so that a day with one offset at both ends has it throughout.
      const day = Math.floor(localHour / 24);
      offset = offsetThrough(day * 24 * MS_AN_HOUR, (day + 1) * 24 * MS_AN_HOUR - 1);
      if (Number.isNaN(offset)) {
        offset = offsetThrough(localHour * MS_AN_HOUR, (localHour + 1) * MS_AN_HOUR - 1);
        offsets.set(localHour, offset);
      } else for (let hour = day * 24; hour < day * 24 + 24; hour++) offsets.set(hour, offset);
    }
    lastHour = localHour;
    lastOffset = offset;
    return offset;
  }

  return { offsetInHour, instantsOf };
}

/** True for an IANA name that this engine knows; a bare offset such as `+02:00` is not a place with clock changes. */
export function isTimeZone(name: string): boolean {
  if (!/^[A-Za-z]/.test(name)) return false;
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
