import type { LoadHolds, LoggedTimes } from "./holds.ts";
import { placesIn, type SoundReadings } from "./kilnReadings.ts";
import { minutesToSetPoint, type RiseRate, riseRate } from "./riseRate.ts";

/** The warm-up's rise is timed over this span below the drying set point, the ramp's over this share of its way. */
const WARM_UP_SPAN_KELVIN = [15, 5] as const;
const RAMP_SPAN_SHARES = [0.25, 0.75] as const;

/** How the load came to one of its set points. */
export interface Rise {
  readonly rise: RiseRate | null;
  readonly minutesToSet: number | null;
}

const noRise: Rise = { rise: null, minutesToSet: null };

/**
 * How fast air rose in the warm-up and in the ramp, and how long it took to either set point.
 *
 * @param longestStep silence that counts as a gap, milliseconds
 */
export function loadRises(
  readings: SoundReadings,
  { loadedAt, dryingSetCelsius, cureSetCelsius }: LoggedTimes,
  { rampFrom, drying, cure }: LoadHolds,
  longestStep: number,
): { readonly warmUp: Rise; readonly ramp: Rise } {
  const end = readings.at[readings.at.length - 1] ?? loadedAt;
  const rise = (from: number, to: number, set: number, low: number, high: number): Rise => {
    const span = placesIn(readings.at, { from, to });
    return {
      rise: riseRate(readings, span, low, high, longestStep),
      minutesToSet: minutesToSetPoint(readings, span, from, set),
    };
  };
  const [below, nearer] = WARM_UP_SPAN_KELVIN;
  const warmUp =
    dryingSetCelsius === null
      ? noRise
      : rise(
          loadedAt,
          drying?.to ?? rampFrom ?? end,
          dryingSetCelsius,
          dryingSetCelsius - below,
          dryingSetCelsius - nearer,
        );
  if (rampFrom === null || dryingSetCelsius === null || cureSetCelsius === null || cureSetCelsius <= dryingSetCelsius) {
    return { warmUp, ramp: noRise };
  }
  const [lower, upper] = RAMP_SPAN_SHARES.map(
    (share) => dryingSetCelsius + share * (cureSetCelsius - dryingSetCelsius),
  );
  return { warmUp, ramp: rise(rampFrom, cure?.to ?? end, cureSetCelsius, lower as number, upper as number) };
}
