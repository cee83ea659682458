/** The readings of one load, oldest first; NaN is *not recorded*. */
export interface HoldReadings {
  /** Milliseconds UTC. */
  readonly at: Float64Array;
  readonly airOnCelsius: Float64Array;
  /** 0 or 1; null where the logger does not record the heater. */
  readonly heaterOn: Float64Array | null;
}

const MINUTE = 60_000;

/**
 * How far below set point the air must stay to count as short of heat. An on/off thermostat with a differential of 2 to
 * 4 K dips one or two kelvins below its set point in every cycle (common practice), which is no lack of power.
 */
export const SHORT_OF_SET_POINT_CELSIUS = 2;

/** How long it must stay there without a break: longer than the cold half of an ordinary cycle of 10 to 20 minutes. */
export const UNBROKEN_MINUTES = 25;

/** Without heater_on, air that still swings by more than this within that time is being switched on and off. */
export const CYCLING_SWING_CELSIUS = 1.5;

/** After this the warm-up counts as over, even where the air never came near the set point. */
export const LONGEST_WARM_UP_MINUTES = 60;

/** Fewer readings than this in the hold, or less of it covered, say nothing about the heater. */
export const FEWEST_READINGS = 30;
const LEAST_COVERED_SHARE = 0.5;

/**
 * Share (0 to 1) of the drying hold, after warm-up, in which the heater could not satisfy the thermostat: air-on more
 * than {@link SHORT_OF_SET_POINT_CELSIUS} below set point for {@link UNBROKEN_MINUTES} on end, the heater on all the
 * while or, where heater_on is not recorded, no cycling to be seen.
 *
 * Such a load is slow for want of power, not because of its bed or the air's humidity, and does not belong in the same
 * fit as the others.
 *
 * @param holdFrom loading, milliseconds UTC
 * @param holdTo start of the cure
 * @returns null where the readings are too few or cover less than half of the hold
 * @throws {RangeError} when the hold ends before it starts or the columns differ in length
 */
export function powerLimitedShare(
  readings: HoldReadings,
  dryingSetCelsius: number,
  holdFrom: number,
  holdTo: number,
): number | null {
  const { at, airOnCelsius, heaterOn } = readings;
  if (!(holdTo > holdFrom)) throw new RangeError(`the hold must end after it starts; got ${holdFrom} to ${holdTo}`);
  if (airOnCelsius.length !== at.length || (heaterOn && heaterOn.length !== at.length)) {
    throw new RangeError("the columns of the readings differ in length");
  }
  const rows: number[] = [];
  for (let i = 0; i < at.length; i++) {
    const t = at[i] as number;
    if (t >= holdFrom && t < holdTo && !Number.isNaN(airOnCelsius[i])) rows.push(i);
  }
  const time = (k: number): number => at[rows[k] as number] as number;
  const air = (k: number): number => airOnCelsius[rows[k] as number] as number;
  if (rows.length < FEWEST_READINGS) return null;
  if (time(rows.length - 1) - time(0) < LEAST_COVERED_SHARE * (holdTo - holdFrom)) return null;

  const low = dryingSetCelsius - SHORT_OF_SET_POINT_CELSIUS;
  let first = 0;
  while (first < rows.length && air(first) < low && time(first) < holdFrom + LONGEST_WARM_UP_MINUTES * MINUTE) first++;
  if (rows.length - first < FEWEST_READINGS) return null;

  const heating = (k: number): boolean => heaterOn?.[rows[k] as number] !== 0;
  const heaterKnown = heaterOn !== null && rows.every((row) => !Number.isNaN(heaterOn[row]));
  let limited = 0;
  for (let start = first; start < rows.length; ) {
    let end = start;
    while (end < rows.length && air(end) < low && heating(end)) end++;
    if (end > start && isUnbroken(start, end, time, air, heaterKnown)) limited += end - start;
    start = Math.max(end, start + 1);
  }
  return limited / (rows.length - first);
}

/** Did the stretch [start, end) last long enough and, where only the air tells, pass without cycling? */
function isUnbroken(
  start: number,
  end: number,
  time: (k: number) => number,
  air: (k: number) => number,
  heaterKnown: boolean,
): boolean {
  const window = UNBROKEN_MINUTES * MINUTE;
  if (time(end - 1) - time(start) < window) return false;
  if (heaterKnown) return true;
  // Swings are looked for within each window, so that a slow change with the weather does not pass for cycling.
  let swings = 0;
  let windows = 0;
  for (let from = start; from < end && time(end - 1) - time(from) >= window; ) {
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    let k = from;
    for (; k < end && time(k) - time(from) < window; k++) {
      lowest = Math.min(lowest, air(k));
      highest = Math.max(highest, air(k));
    }
    windows++;
    if (highest - lowest > CYCLING_SWING_CELSIUS) swings++;
    from = k;
  }
  return swings * 2 <= windows;
}
