import { findHeatOff } from "./findHeatOff.ts";
import { findRamp } from "./findRamp.ts";
import { firstPeak } from "./firstPeak.ts";
import { firstPlaceFrom, MINUTE, placesIn, type SoundReadings, type TimeSpan } from "./kilnReadings.ts";

/** What is logged of a load by hand; null where it is not. Moments are milliseconds UTC. */
export interface LoggedTimes {
  readonly loadedAt: number;
  readonly cureStartedAt: number | null;
  readonly heatOffAt: number | null;
  /** Null while the load is in the kiln. */
  readonly unloadedAt: number | null;
  readonly dryingSetCelsius: number | null;
  readonly cureSetCelsius: number | null;
}

/** A stretch over which the thermostat held one set point. */
export interface Hold extends TimeSpan {
  /** Whether its end was logged or found in the readings. */
  readonly endIs: "logged" | "found";
}

/** The parts of one load. Where one is null, its reason says why. */
export interface LoadHolds {
  /** The first time that air turned down again, or the end of a long warm-up that never got there. */
  readonly warmUpEndsAt: number | null;
  readonly drying: Hold | null;
  readonly dryingReason: string | null;
  /** When the kiln was turned up for the cure. */
  readonly rampFrom: number | null;
  readonly rampIs: "logged" | "found" | null;
  /** The first time in the cure that air turned down again, the heat still on. */
  readonly rampTo: number | null;
  readonly cure: Hold | null;
  readonly cureReason: string | null;
}

/** A kiln that has not come to its set point by then is judged from then on. Common practice: half an hour to an hour. */
const LONGEST_WARM_UP = 60 * MINUTE;
const LONGEST_RAMP = 120 * MINUTE;
/** A logged start of the cure this much later than the readings show it was written down late. */
const LOGGED_LATE = 15 * MINUTE;
/** Less than this is no hold. */
const SHORTEST_HOLD = 20 * MINUTE;

/**
 * Finds warm-up, drying hold, ramp and cure of one load. The logged start of the cure and end of heating are used where they
 * are logged, and found in the readings where not; a start of the cure that was logged after the air had long risen
 * gives way to the readings, so that no part of the ramp passes for the hold.
 *
 * @param readings sound readings from loading to unloading
 * @param prominenceKelvin from `turnProminence`
 */
export function findHolds(readings: SoundReadings, times: LoggedTimes, prominenceKelvin: number): LoadHolds {
  const { at } = readings;
  const end = times.unloadedAt ?? at[at.length - 1] ?? times.loadedAt;
  const whole = placesIn(at, { from: times.loadedAt, to: end });
  if (whole.end - whole.start < 3) return nothing("The logger wrote nothing while this load was in the kiln.");

  const { dryingSetCelsius, cureSetCelsius, cureStartedAt } = times;
  const began = at[whole.start] as number;
  const warmUp = firstPeak(readings, whole, dryingSetCelsius, prominenceKelvin);
  const stopsBy = Math.min(end, Math.max(began, times.loadedAt) + LONGEST_WARM_UP);
  const warmUpEndsAt = warmUp !== null && (cureStartedAt === null || warmUp < cureStartedAt) ? warmUp : stopsBy;

  const seenRamp = findRamp(readings, { from: warmUpEndsAt, to: end }, dryingSetCelsius, cureSetCelsius);
  const isLate = cureStartedAt !== null && seenRamp !== null && cureStartedAt - seenRamp.clearAt > LOGGED_LATE;
  const rampFrom = cureStartedAt === null || isLate ? (seenRamp?.from ?? null) : cureStartedAt;
  const rampIs = rampFrom === null ? null : rampFrom === cureStartedAt ? "logged" : "found";

  // Without a cure, logged or seen, the load is still drying: its hold ends with the readings.
  const stillDrying = rampFrom === null && times.unloadedAt === null;
  const dryingEnd = rampFrom ?? (stillDrying ? end : null);
  const drying = holdBetween(readings, warmUpEndsAt, dryingEnd, rampIs ?? "found");
  const dryingReason =
    drying !== null
      ? null
      : dryingEnd === null
        ? "The start of the cure is not logged and the readings do not show it."
        : "The readings do not cover the time between warm-up and cure.";

  const common = { warmUpEndsAt, drying, dryingReason, rampFrom, rampIs } as const;
  if (rampFrom === null) return { ...common, rampTo: null, cure: null, cureReason: "No cure is logged or to be seen." };

  const heatOff = times.heatOffAt ?? findHeatOff(readings, { from: rampFrom, to: end }, times.unloadedAt !== null);
  const cureEnd = heatOff ?? end;
  const peak = firstPeak(readings, placesIn(at, { from: rampFrom, to: cureEnd }), cureSetCelsius, prominenceKelvin);
  const rampTo = peak ?? Math.min(cureEnd, rampFrom + LONGEST_RAMP);
  const cure = holdBetween(readings, rampTo, cureEnd, times.heatOffAt === null ? "found" : "logged");
  const cureReason = cure !== null ? null : "The readings show no 20 minutes of the cure at its set point.";
  return { ...common, rampTo: cure && peak, cure, cureReason };
}

/** @returns null where it is too short or the readings stop short of it */
function holdBetween({ at }: SoundReadings, from: number, to: number | null, endIs: Hold["endIs"]): Hold | null {
  if (to === null || to - from < SHORTEST_HOLD) return null;
  const first = firstPlaceFrom(at, from);
  const last = firstPlaceFrom(at, to) - 1;
  if (last <= first || (at[last] as number) - (at[first] as number) < SHORTEST_HOLD) return null;
  return { from, to, endIs };
}

function nothing(reason: string): LoadHolds {
  return {
    warmUpEndsAt: null,
    drying: null,
    dryingReason: reason,
    rampFrom: null,
    rampIs: null,
    rampTo: null,
    cure: null,
    cureReason: reason,
  };
}
