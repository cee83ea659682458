/** How finely values were read, judged by the values themselves. */
export interface ReadingStep {
  /** Different values, those alike to nine digits counted once. */
  readonly distinctValues: number;
  /** Smallest gap between two different values, in their unit; null where there is only one. */
  readonly step: number | null;
  /** All values lie on a grid of that step, as a meter's readings do. */
  readonly onGrid: boolean;
}

/**
 * Distinct values and the step between them. A meter that reads to 0.5 shows a handful of values, all multiples of it.
 *
 * @throws RangeError for no values
 */
export function readingStep(values: ArrayLike<number>): ReadingStep {
  if (values.length === 0) throw new RangeError("readingStep requires at least one value; got none");
  const ordered = Array.from(values).sort((a, b) => a - b);
  const first = ordered[0] as number;
  const tolerance = 1e-9 * Math.max(Math.abs(first), Math.abs(ordered[ordered.length - 1] as number));
  const distinct: number[] = [first];
  let step: number | null = null;
  for (const value of ordered) {
    const gap = value - (distinct[distinct.length - 1] as number);
    if (gap <= tolerance) continue;
    distinct.push(value);
    if (step === null || gap < step) step = gap;
  }
  const grid = step;
  const onGrid =
    grid !== null &&
    distinct.every((value) => Math.abs((value - first) / grid - Math.round((value - first) / grid)) < 1e-3);
  return { distinctValues: distinct.length, step, onGrid };
}

/**
 * Whether readings are too coarse for limits: they lie on a grid whose step is wider than sigma. Moving ranges then take
 * three values or so, sigma is set by the meter, and limits mean nothing (Wheeler and Lyday, Evaluating the Measurement
 * Process: the increment should be no larger than one sigma; from memory).
 *
 * Two or three values that happen to be far apart lie on a grid as well: fewer than 6 values are never called coarse.
 */
export function readingsAreCoarse(values: ArrayLike<number>, sigma: number): boolean {
  if (values.length < 6) return false;
  const { step, onGrid, distinctValues } = readingStep(values);
  return distinctValues === 1 || (onGrid && step !== null && step > sigma);
}
