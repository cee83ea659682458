import type { PlaceSpan, SoundReadings } from "./kilnReadings.ts";
import { turningPoints } from "./turningPoints.ts";

/**
 * When a rise to a set point ended: the first time that air turns down by the prominence after at least half of the way,
 * so that a door opened early on does not pass for it.
 *
 * @param setCelsius the set point it is on its way to; null where it is not logged
 * @returns milliseconds UTC; null where air never turned down
 */
export function firstPeak(
  { at, airOnCelsius }: SoundReadings,
  span: PlaceSpan,
  setCelsius: number | null,
  prominenceKelvin: number,
): number | null {
  if (span.end <= span.start) return null;
  const start = airOnCelsius[span.start] as number;
  const halfWay = setCelsius === null ? start : (start + setCelsius) / 2;
  const peak = turningPoints(airOnCelsius, span, prominenceKelvin).find(
    ({ kind, place }) => kind === "high" && (airOnCelsius[place] as number) >= halfWay,
  );
  return peak ? (at[peak.place] as number) : null;
}
