import { type KilnReadings, MINUTE, type PlaceSpan } from "./kilnReadings.ts";

/** Standing still for this long is frozen where something else shows that it should have moved. */
const SUSPECT_MINUTES = 30;
/** And for this long in any case: the rule of the log check. */
const CERTAIN_MINUTES = 120;
/** A logger that reads coarser than this may well show one value for half an hour. */
const FINE_KELVIN = 0.5;

/**
 * Stretches over which air on shows one value though the kiln moves: for two hours; or for half an hour while the heater
 * switched twice, or while every other probe of a fine logger stood as still.
 *
 * @param resolutionKelvin smallest step of air on; null where it never moved
 */
export function frozenStretches(readings: KilnReadings, resolutionKelvin: number | null): readonly PlaceSpan[] {
  const { at, airOnCelsius } = readings;
  const found: PlaceSpan[] = [];
  for (let start = 0; start < at.length; ) {
    const end = endOfSame(airOnCelsius, start, at.length);
    const minutes = ((at[end - 1] as number) - (at[start] as number)) / MINUTE;
    const stands =
      minutes >= CERTAIN_MINUTES ||
      (minutes >= SUSPECT_MINUTES &&
        (switches(readings.heaterOn, start, end) >= 2 ||
          (resolutionKelvin !== null && resolutionKelvin < FINE_KELVIN && othersStand(readings, start, end))));
    if (stands) found.push({ start, end });
    start = end;
  }
  return found;
}

/** Where the run of one value that begins at `start` ends (exclusive); a silent reading is a run of its own. */
function endOfSame(values: Float64Array, start: number, limit: number): number {
  let end = start + 1;
  while (end < limit && values[end] === values[start]) end++;
  return end;
}

function switches(heaterOn: Float64Array | null, start: number, end: number): number {
  if (heaterOn === null) return 0;
  let count = 0;
  for (let i = start + 1; i < end; i++)
    if (Math.abs((heaterOn[i] as number) - (heaterOn[i - 1] as number)) === 1) count++;
  return count;
}

function othersStand({ airOffCelsius, bedCelsius }: KilnReadings, start: number, end: number): boolean {
  const others = [airOffCelsius, bedCelsius].filter((probe) => probe !== null && !Number.isNaN(probe[start]));
  return others.length > 0 && others.every((probe) => probe !== null && endOfSame(probe, start, end) === end);
}
