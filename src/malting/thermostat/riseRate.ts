import { MINUTE, type PlaceSpan, type SoundReadings } from "./kilnReadings.ts";

/** How fast air rose between two temperatures with the heater on all the while. */
export interface RiseRate {
  readonly kelvinPerMinute: number;
  readonly fromCelsius: number;
  readonly toCelsius: number;
}

/** When air first rises through a level, interpolated, milliseconds UTC; null where it never does within `span`. */
export function risesThrough(
  { at, airOnCelsius: air }: SoundReadings,
  span: PlaceSpan,
  celsius: number,
): number | null {
  for (let i = span.start + 1; i < span.end; i++) {
    const [before, value] = [air[i - 1] as number, air[i] as number];
    if (before < celsius && value >= celsius) {
      const from = at[i - 1] as number;
      return from + ((celsius - before) / (value - before)) * ((at[i] as number) - from);
    }
  }
  return null;
}

/** From loading (or the turning up) until air first stands at the set point, minutes; null where it never did. */
export function minutesToSetPoint(
  readings: SoundReadings,
  span: PlaceSpan,
  startedAt: number,
  setCelsius: number,
): number | null {
  if (span.end > span.start && (readings.airOnCelsius[span.start] as number) >= setCelsius) return 0;
  const reached = risesThrough(readings, span, setCelsius);
  return reached === null ? null : (reached - startedAt) / MINUTE;
}

/**
 * Rise at full power between two temperatures: a weak element or a failing fan shows here first. Loads are compared over the
 * same span, since the rise slows as air comes near what the heater can do.
 *
 * @param longestStepMilliseconds silence that counts as a gap
 * @returns null where air did not pass through both in one rise, a gap lies between, or the heater was off on the way
 */
export function riseRate(
  readings: SoundReadings,
  span: PlaceSpan,
  fromCelsius: number,
  toCelsius: number,
  longestStepMilliseconds: number,
): RiseRate | null {
  if (!(toCelsius > fromCelsius)) {
    throw new RangeError(`riseRate requires a span that rises; got ${fromCelsius} to ${toCelsius} °C`);
  }
  const { at, airOnCelsius: air, heaterOn } = readings;
  const top = risesThrough(readings, span, toCelsius);
  if (top === null) return null;
  let i = span.start;
  while (i < span.end && (at[i] as number) < top) i++;
  for (; i > span.start; i--) {
    const [before, value] = [air[i - 1] as number, air[i] as number];
    const [from, to] = [at[i - 1] as number, at[i] as number];
    if (to - from > longestStepMilliseconds || heaterOn?.[i - 1] === 0) return null;
    if (before >= fromCelsius) continue;
    const foot = from + ((fromCelsius - before) / (value - before)) * (to - from);
    return top > foot
      ? { kelvinPerMinute: ((toCelsius - fromCelsius) / (top - foot)) * MINUTE, fromCelsius, toCelsius }
      : null;
  }
  return null;
}
