import type { PlaceSpan } from "./kilnReadings.ts";
import type { Cycle } from "./wholeCycles.ts";

/** A time mean with what is uncertain about it. */
export interface TimeMean {
  readonly mean: number;
  readonly standardError: number;
}

/** Neighbours more alike than this leave hardly anything independent to judge by. */
const MOST_LAG_ONE = 0.95;

/** Standard error of a mean of neighbours in time, widened by (1 + r)/(1 − r) for their lag-1 correlation where r > 0. */
function serialStandardError(values: Float64Array, mean: number): number {
  let [squares, products] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const deviation = (values[i] as number) - mean;
    squares += deviation * deviation;
    if (i > 0) products += deviation * ((values[i - 1] as number) - mean);
  }
  if (squares === 0) return 0;
  const r = Math.min(MOST_LAG_ONE, Math.max(0, products / squares));
  return Math.sqrt((squares / (values.length - 1) / values.length) * ((1 + r) / (1 - r)));
}

/**
 * Time mean over whole cycles, each weighing as long as it lasted. Its standard error is that of the cycles' means, widened
 * for the likeness of neighbours.
 *
 * @throws {RangeError} below three cycles
 */
export function meanOverCycles(cycles: readonly Cycle[]): TimeMean {
  if (cycles.length < 3) throw new RangeError(`meanOverCycles requires at least three cycles; got ${cycles.length}`);
  let [area, time] = [0, 0];
  for (const { from, to, meanCelsius } of cycles) {
    area += (to - from) * meanCelsius;
    time += to - from;
  }
  const mean = area / time;
  return {
    mean,
    standardError: serialStandardError(
      Float64Array.from(cycles, (c) => c.meanCelsius),
      mean,
    ),
  };
}

/**
 * Time mean (trapezoid) over all of a hold: for readings too far apart to tell one cycle from the next, which catch the
 * cycle anywhere. Steps over `longestStepMilliseconds` are left out.
 *
 * @throws {RangeError} below three readings
 */
export function meanOverHold(
  at: Float64Array,
  air: Float64Array,
  span: PlaceSpan,
  longestStepMilliseconds: number,
): TimeMean {
  const { start, end } = span;
  if (end - start < 3) throw new RangeError(`meanOverHold requires at least three readings; got ${end - start}`);
  let [area, time] = [0, 0];
  for (let i = start + 1; i < end; i++) {
    const step = (at[i] as number) - (at[i - 1] as number);
    if (step > longestStepMilliseconds) continue;
    area += (step * ((air[i] as number) + (air[i - 1] as number))) / 2;
    time += step;
  }
  const values = air.subarray(start, end);
  const mean = time > 0 ? area / time : values.reduce((sum, value) => sum + value, 0) / values.length;
  return { mean, standardError: serialStandardError(values, mean) };
}
