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
 * Local time of an IANA zone. Offsets are looked up once an hour of the clock and kept, so that a year of readings
 * costs some thousand look-ups.
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

  function lookUp(localHour: number): number {
    const start = localHour * MS_AN_HOUR;
    const atStart = instantsOf(start);
    const atEnd = instantsOf(start + MS_AN_HOUR - 1);
    if (atStart.length !== 1 || atEnd.length !== 1) return Number.NaN;
    const offset = start - (atStart[0] as number);
    return start + MS_AN_HOUR - 1 - (atEnd[0] as number) === offset ? offset : Number.NaN;
  }

  function offsetInHour(localHour: number): number {
    if (localHour === lastHour) return lastOffset;
    let offset = offsets.get(localHour);
    if (offset === undefined) {
      offset = lookUp(localHour);
      offsets.set(localHour, offset);
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
