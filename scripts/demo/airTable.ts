import { pressureAtAltitude, saturationPressure } from "../../src/malting/moistAir.ts";
import { ALTITUDE_METRES } from "./truths.ts";

const LOWEST = -60;
const HIGHEST = 140;
const PER_KELVIN = 50;

export const PRESSURE_PASCALS = pressureAtAltitude(ALTITUDE_METRES);

/** Saturation pressure every 0.02 K: the simulation asks for it millions of times. */
const table = Float64Array.from({ length: (HIGHEST - LOWEST) * PER_KELVIN + 2 }, (_, i) =>
  saturationPressure(LOWEST + i / PER_KELVIN),
);

/** Saturation pressure, Pa, by straight lines between the table's points (within 1 part in 10⁶ of the equation). */
export function saturationPascals(celsius: number): number {
  const x = (celsius - LOWEST) * PER_KELVIN;
  const i = Math.floor(x);
  const low = table[i] as number;
  return low + (x - i) * ((table[i + 1] as number) - low);
}

/** Humidity ratio of air with this vapour pressure at the house's height. */
export function ratioAt(vapourPascals: number): number {
  return (0.621945 * vapourPascals) / (PRESSURE_PASCALS - vapourPascals);
}

/** Relative humidity, 0 to 1, of air at `celsius` with humidity ratio `ratio`. */
export function humidityOf(celsius: number, ratio: number): number {
  return (PRESSURE_PASCALS * ratio) / (0.621945 + ratio) / saturationPascals(celsius);
}
