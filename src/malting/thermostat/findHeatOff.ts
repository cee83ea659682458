import { placesIn, type SoundReadings, type TimeSpan } from "./kilnReadings.ts";

/** Below the highest air by this much, and not back: wider than the swing of any thermostat that still holds a cure. */
const COOLED_KELVIN = 10;

/**
 * When the heat was turned off: the heater's last reading of *on*, or where it is not recorded the last time that air
 * stood within 10 K of the cure's highest.
 *
 * @param span from the ramp to unloading
 * @param ended whether the load has been unloaded; one under way may still be heating
 * @returns milliseconds UTC; null where the heat was still on when the readings end
 */
export function findHeatOff(readings: SoundReadings, span: TimeSpan, ended: boolean): number | null {
  const { at, airOnCelsius, heaterOn } = readings;
  const { start, end } = placesIn(at, span);
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = start; i < end; i++) highest = Math.max(highest, airOnCelsius[i] as number);
  const heating = (i: number): boolean =>
    heaterOn !== null && !Number.isNaN(heaterOn[i])
      ? heaterOn[i] === 1
      : (airOnCelsius[i] as number) >= highest - COOLED_KELVIN;
  for (let i = end - 1; i >= start; i--) {
    if (!heating(i)) continue;
    const cooled = (airOnCelsius[end - 1] as number) < highest - COOLED_KELVIN;
    return ended || cooled ? (at[i] as number) : null;
  }
  return null;
}
