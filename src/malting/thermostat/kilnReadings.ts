/** The readings of one kiln load in time order, oldest first; NaN is *not recorded*. A load's curve is one of these. */
export interface KilnReadings {
  /** Milliseconds UTC. */
  readonly at: Float64Array;
  readonly airOnCelsius: Float64Array;
  /** Null where the logger has no such probe. */
  readonly airOffCelsius: Float64Array | null;
  readonly bedCelsius: Float64Array | null;
  /** 0 or 1; null where the logger does not record it. */
  readonly heaterOn: Float64Array | null;
  readonly fanOn: Float64Array | null;
}

/** Readings of air on that can be worked with: none of them silent, frozen or a spike. Columns as in the readings. */
export interface SoundReadings {
  readonly at: Float64Array;
  readonly airOnCelsius: Float64Array;
  readonly heaterOn: Float64Array | null;
  readonly fanOn: Float64Array | null;
}

/** Places `start` (inclusive) to `end` (exclusive) in a column. */
export interface PlaceSpan {
  readonly start: number;
  readonly end: number;
}

/** Two moments, milliseconds UTC. */
export interface TimeSpan {
  readonly from: number;
  readonly to: number;
}

export const MINUTE = 60_000;

/**
 * @throws {RangeError} when the columns differ in length or time runs backwards
 */
export function requireInOrder(readings: KilnReadings | SoundReadings, caller: string): void {
  const { at } = readings;
  for (const [name, column] of Object.entries(readings)) {
    if (column !== null && (column as Float64Array).length !== at.length) {
      throw new RangeError(
        `${caller} requires columns of one length; got ${at.length} moments and ${(column as Float64Array).length} of ${name}`,
      );
    }
  }
  for (let i = 1; i < at.length; i++) {
    if (!((at[i] as number) >= (at[i - 1] as number))) {
      throw new RangeError(`${caller} requires readings in time order; got ${at[i]} after ${at[i - 1]}`);
    }
  }
}

/** The first place whose moment is not before `moment`. */
export function firstPlaceFrom(at: Float64Array, moment: number): number {
  let low = 0;
  let high = at.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((at[middle] as number) < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The places whose moments lie in `span`, both ends included. */
export function placesIn(at: Float64Array, span: TimeSpan): PlaceSpan {
  const start = firstPlaceFrom(at, span.from);
  let end = start;
  while (end < at.length && (at[end] as number) <= span.to) end++;
  return { start, end };
}

/** The middle value of one or more numbers, with no copy kept. Unlike a general quantile it stays in typed arrays, for speed. */
export function middleOf(values: Float64Array): number {
  if (values.length === 0) throw new RangeError("middleOf requires at least one value; got none");
  const ordered = Float64Array.from(values).sort();
  const half = ordered.length >> 1;
  return ordered.length % 2 === 1
    ? (ordered[half] as number)
    : ((ordered[half - 1] as number) + (ordered[half] as number)) / 2;
}
