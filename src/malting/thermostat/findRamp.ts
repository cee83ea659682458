import { MINUTE, middleOf, placesIn, type SoundReadings, type TimeSpan } from "./kilnReadings.ts";

/** Air must stay up this long: a leap is no ramp. */
const STAYS_UP = 10 * MINUTE;
/** With one set point unknown, this far from the other is beyond any cycle of it. */
const BEYOND_A_CYCLE_KELVIN = 10;
/** Set points nearer than this have no ramp between them that could be told from a cycle. */
const LEAST_RAMP_KELVIN = 5;

/** The temperature that tells the drying hold from the cure; null where the set points do not. */
function parting(dryingSet: number | null, cureSet: number | null): number | null {
  if (dryingSet !== null && cureSet !== null) {
    return cureSet - dryingSet >= LEAST_RAMP_KELVIN ? (dryingSet + cureSet) / 2 : null;
  }
  if (cureSet !== null) return cureSet - BEYOND_A_CYCLE_KELVIN;
  return dryingSet === null ? null : dryingSet + BEYOND_A_CYCLE_KELVIN;
}

/** The turning up as air shows it: no earlier than the one and no later than the other, milliseconds UTC. */
export interface SeenRamp {
  /** The last time that air stood at the middle of the hold. */
  readonly from: number;
  /** The first time after it that air stood higher than it ever had in the hold. */
  readonly clearAt: number;
}

/**
 * When the kiln was turned up, as air on shows it before it passed half-way to the cure and stayed there. Up to the top of
 * a cycle the ramp looks like any other rise, so that readings give no moment but a span.
 *
 * @param span from the end of the warm-up to unloading
 * @returns null where no such rise is to be seen
 */
export function findRamp(
  { at, airOnCelsius }: SoundReadings,
  span: TimeSpan,
  dryingSetCelsius: number | null,
  cureSetCelsius: number | null,
): SeenRamp | null {
  const level = parting(dryingSetCelsius, cureSetCelsius);
  const { start, end } = placesIn(at, span);
  if (level === null) return null;
  const up = firstStay(at, airOnCelsius, start, end, level);
  // Up from the first reading on: nobody saw it being turned up.
  if (up === null || up === start) return null;
  const middle = Math.min(level, middleOf(airOnCelsius.subarray(start, up)));
  let from = up - 1;
  while (from > start && (airOnCelsius[from] as number) > middle) from--;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = start; i <= from; i++) highest = Math.max(highest, airOnCelsius[i] as number);
  let clear = from;
  while (clear < up && (airOnCelsius[clear] as number) <= highest) clear++;
  return { from: at[from] as number, clearAt: at[clear] as number };
}

function firstStay(at: Float64Array, air: Float64Array, start: number, end: number, level: number): number | null {
  let since = -1;
  for (let i = start; i < end; i++) {
    if ((air[i] as number) < level) since = -1;
    else if (since < 0) since = i;
    else if ((at[i] as number) - (at[since] as number) >= STAYS_UP) return since;
  }
  return null;
}
