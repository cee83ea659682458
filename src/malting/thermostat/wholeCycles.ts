import { type HeaterTurn, heaterTurns } from "./heaterTurns.ts";
import { type PlaceSpan, placesIn, type SoundReadings, type TimeSpan } from "./kilnReadings.ts";
import { sharpTurn } from "./sharpTurn.ts";
import { type Turn, turningPoints } from "./turningPoints.ts";

/** One whole cycle of a thermostat: from the middle of one rise to the middle of the next. */
export interface Cycle {
  /** Milliseconds UTC, interpolated between readings. */
  readonly from: number;
  readonly to: number;
  /** Trapezoid over true elapsed time. */
  readonly meanCelsius: number;
  readonly highCelsius: number;
  readonly lowCelsius: number;
  /** Heater on, by its own record where logged, else the time that air rises, milliseconds. */
  readonly onTime: number;
  /** The readings that it rests on. */
  readonly readings: number;
  /** Air at the moment the heater switched, interpolated; null where the heater is not logged. */
  readonly switchOffCelsius: number | null;
  readonly switchOnCelsius: number | null;
}

export interface WholeCycles {
  readonly cycles: readonly Cycle[];
  /** What the turning points were read from. */
  readonly readFrom: "heater" | "air";
}

/** How the readings were taken, for {@link findWholeCycles}. */
export interface CycleSetting {
  /** From `turnProminence`. */
  readonly prominenceKelvin: number;
  /** Silence that counts as a gap, milliseconds. */
  readonly longestStep: number;
  /** Usual time between readings, milliseconds. */
  readonly usualStep: number;
}

/** A step of over this share of a cycle may hide a turn of it, unless readings are that far apart throughout. */
const LONGEST_STEP_SHARE = 1 / 3;
const LONGEST_STEPS = 2;

/**
 * Cuts the hold into whole cycles. Turning points come from heater_on where it is logged throughout, else from air by
 * hysteresis. Each cut lies where air rises through the middle between a low and the next high, so that an error in its
 * time hardly moves the mean. A gap breaks the row: a cycle with a gap in it is not whole.
 */
export function findWholeCycles(readings: SoundReadings, hold: TimeSpan, setting: CycleSetting): WholeCycles {
  const { at, airOnCelsius: air, heaterOn } = readings;
  const whole = placesIn(at, hold);
  const byHeater = heaterTurns(at, air, heaterOn, whole);
  const cycles: Cycle[] = [];
  for (const span of unbrokenSpans(at, whole, setting.longestStep)) {
    const turns = byHeater
      ? byHeater.filter(({ place }) => place > span.start && place < span.end - 1)
      : turningPoints(air, span, setting.prominenceKelvin);
    cycles.push(...cyclesOf(at, air, turns, setting.usualStep));
  }
  return { cycles, readFrom: byHeater ? "heater" : "air" };
}

function* unbrokenSpans(at: Float64Array, whole: PlaceSpan, longest: number): Generator<PlaceSpan> {
  let start = whole.start;
  for (let i = whole.start + 1; i <= whole.end; i++) {
    if (i < whole.end && (at[i] as number) - (at[i - 1] as number) <= longest) continue;
    if (i - start > 2) yield { start, end: i };
    start = i;
  }
}

interface Cut {
  readonly at: number;
  /** Place of the first reading after it. */
  readonly place: number;
  readonly celsius: number;
}

/** Where air rises through the middle between two neighbouring turns, the later one reading included. */
function riseBetween(at: Float64Array, air: Float64Array, low: Turn, high: Turn): Cut | null {
  const middle = ((air[low.place] as number) + (air[high.place] as number)) / 2;
  for (let i = low.place + 1; i <= high.place; i++) {
    const value = air[i] as number;
    if (value < middle) continue;
    const before = air[i - 1] as number;
    const share = value > before ? (middle - before) / (value - before) : 1;
    const from = at[i - 1] as number;
    return { at: from + share * ((at[i] as number) - from), place: i, celsius: middle };
  }
  return null;
}

const isHeaterTurn = (turn: Turn): turn is HeaterTurn => "switchedAt" in turn;

function cyclesOf(at: Float64Array, air: Float64Array, turns: readonly Turn[], usualStep: number): Cycle[] {
  const cycles: Cycle[] = [];
  for (let k = 0; k + 3 < turns.length; k++) {
    const [low, high, nextLow, nextHigh] = turns.slice(k, k + 4) as [Turn, Turn, Turn, Turn];
    if (low.kind !== "low") continue;
    if (!(low.place < high.place && high.place < nextLow.place && nextLow.place < nextHigh.place)) continue;
    const first = riseBetween(at, air, low, high);
    const last = riseBetween(at, air, nextLow, nextHigh);
    if (first === null || last === null || !(last.at > first.at)) continue;
    const allowed = Math.max(LONGEST_STEP_SHARE * (last.at - first.at), LONGEST_STEPS * usualStep);
    // The turns on either side count too, since the cuts lie half-way between them.
    if (longestStep(at, low.place - 1, nextHigh.place + 1) > allowed) continue;
    const top = sharpTurn(at, air, low, high, nextLow);
    const foot = sharpTurn(at, air, high, nextLow, nextHigh);
    const switched = isHeaterTurn(high) && isHeaterTurn(nextLow) ? { off: high, on: nextLow } : null;
    const highAt = switched?.off.switchedAt ?? top?.at ?? (at[high.place] as number);
    const lowAt = switched?.on.switchedAt ?? foot?.at ?? (at[nextLow.place] as number);
    cycles.push({
      from: first.at,
      to: last.at,
      meanCelsius: meanBetween(at, air, first, last),
      highCelsius: top?.celsius ?? (air[high.place] as number),
      lowCelsius: foot?.celsius ?? (air[nextLow.place] as number),
      onTime: last.at - first.at - (lowAt - highAt),
      readings: last.place - first.place,
      switchOffCelsius: switched && airAt(at, air, switched.off.switchedAt, high.place, top?.slopeBefore),
      switchOnCelsius: switched && airAt(at, air, switched.on.switchedAt, nextLow.place, foot?.slopeBefore),
    });
  }
  return cycles;
}

function longestStep(at: Float64Array, first: number, last: number): number {
  let longest = 0;
  for (let i = Math.max(1, first + 1); i <= Math.min(last, at.length - 1); i++)
    longest = Math.max(longest, (at[i] as number) - (at[i - 1] as number));
  return longest;
}

/** Time mean by the trapezoid between two cuts, each a point of its own. */
function meanBetween(at: Float64Array, air: Float64Array, first: Cut, last: Cut): number {
  let area = 0;
  let [time, value] = [first.at, first.celsius];
  for (let i = first.place; i < last.place; i++) {
    const next = at[i] as number;
    area += ((value + (air[i] as number)) / 2) * (next - time);
    [time, value] = [next, air[i] as number];
  }
  area += ((value + last.celsius) / 2) * (last.at - time);
  return area / (last.at - first.at);
}

/** Air at a switch near the turn at `place`: on from the reading before it at the slope of the branch that it ended. */
function airAt(at: Float64Array, air: Float64Array, moment: number, place: number, slope: number | undefined): number {
  let i = place;
  while (i > 0 && (at[i] as number) > moment) i--;
  while (i + 1 < at.length && (at[i + 1] as number) <= moment) i++;
  return (air[i] as number) + (slope ?? 0) * (moment - (at[i] as number));
}
