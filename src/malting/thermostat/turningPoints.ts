import type { PlaceSpan } from "./kilnReadings.ts";

/** Where air stops rising or falling. */
export interface Turn {
  readonly kind: "low" | "high";
  /** Place of the reading furthest out. */
  readonly place: number;
}

/** Least retreat from an extreme that makes it a turning point, K. */
const LEAST_PROMINENCE_KELVIN = 0.3;
/** Noise can wander this many of its standard deviations either way in the course of a hold. */
const NOISE_REACH = 6;
/** No kiln probe is noisier than this, K; what looks so is a cycle sampled too coarsely. */
const MOST_NOISE_KELVIN = 0.2;

/**
 * How far air must come back from an extreme before it counts as a turning point: 0.3 K, three steps of the logger, or six
 * times its noise, whichever is most.
 */
export function turnProminence(resolutionKelvin: number | null, noiseKelvin: number): number {
  return Math.max(
    LEAST_PROMINENCE_KELVIN,
    3 * (resolutionKelvin ?? 0),
    NOISE_REACH * Math.min(noiseKelvin, MOST_NOISE_KELVIN),
  );
}

/**
 * Turning points of a series by hysteresis: an extreme counts once the series has come back from it by the prominence.
 * No filter is laid over the readings, since a median of three already halves a cycle of few readings.
 *
 * @param span the places to look at; its ends are never turning points
 * @returns alternating, in time order
 * @throws {RangeError} for a prominence that is not positive
 */
export function turningPoints(values: Float64Array, span: PlaceSpan, prominenceKelvin: number): readonly Turn[] {
  if (!(prominenceKelvin > 0))
    throw new RangeError(`turningPoints requires a positive prominence; got ${prominenceKelvin}`);
  const turns: Turn[] = [];
  let highest = span.start;
  let lowest = span.start;
  let rising: boolean | null = null;
  const add = (kind: Turn["kind"], place: number): void => {
    if (place !== span.start) turns.push({ kind, place });
  };
  for (let i = span.start + 1; i < span.end; i++) {
    const value = values[i] as number;
    if (value > (values[highest] as number)) highest = i;
    if (value < (values[lowest] as number)) lowest = i;
    if (rising !== false && (values[highest] as number) - value >= prominenceKelvin) {
      add("high", highest);
      rising = false;
      lowest = i;
    } else if (rising !== true && value - (values[lowest] as number) >= prominenceKelvin) {
      add("low", lowest);
      rising = true;
      highest = i;
    }
  }
  return turns;
}
