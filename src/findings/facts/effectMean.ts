import type { SeenEffect } from "./chanceReal.ts";

function scatterOf(values: readonly number[]): { mean: number; variance: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(1, values.length - 1);
  return { mean, variance };
}

/**
 * How far the latest values lie from the earlier ones, with a 95 % interval from the scatter of the earlier ones alone: a
 * trouble that also widens the scatter must not hide itself.
 */
export function shiftOf(earlier: readonly number[], latest: readonly number[]): SeenEffect | null {
  if (earlier.length < 8 || latest.length < 3) return null;
  const before = scatterOf(earlier);
  const estimate = scatterOf(latest).mean - before.mean;
  const reach = 1.96 * Math.sqrt(before.variance * (1 / latest.length + 1 / earlier.length));
  return { estimate, low: estimate - reach, high: estimate + reach };
}

/** The mean of values with its 95 % interval; null for fewer than three. */
export function meanOf(values: readonly number[]): SeenEffect | null {
  if (values.length < 3) return null;
  const { mean, variance } = scatterOf(values);
  const reach = 1.96 * Math.sqrt(variance / values.length);
  return { estimate: mean, low: mean - reach, high: mean + reach };
}

/**
 * The mean of the latest values with a 95 % interval from the scatter of the earlier ones, where there are eight: so few as the latest
 * often lie close together by chance. Else as {@link meanOf}.
 */
export function meanByScatterOf(earlier: readonly number[], latest: readonly number[]): SeenEffect | null {
  if (earlier.length < 8 || latest.length < 3) return meanOf(latest);
  const { mean } = scatterOf(latest);
  const reach = 1.96 * Math.sqrt(scatterOf(earlier).variance / latest.length);
  return { estimate: mean, low: mean - reach, high: mean + reach };
}

/** Fewer stretches to compare with say nothing of how means usually wander. */
const FEWEST_BLOCKS = 8;

/**
 * How far the mean of the latest values lies from all before them, with a 95 % interval from the scatter of the means of as many
 * in a row before: where neighbours resemble each other such means wander by more than single values let expect (batch means:
 * Law and Kelton, Simulation Modeling and Analysis, chapter 9; from memory). Null where too few such stretches lie before.
 */
export function wanderedBy(earlier: readonly number[], latest: readonly number[]): SeenEffect | null {
  const length = latest.length;
  if (length < 3) return null;
  const blocks: number[] = [];
  for (let end = earlier.length; end >= length; end -= length)
    blocks.push(scatterOf(earlier.slice(end - length, end)).mean);
  if (blocks.length < FEWEST_BLOCKS) return null;
  const before = scatterOf(blocks);
  const estimate = scatterOf(latest).mean - before.mean;
  const reach = 1.96 * Math.sqrt(before.variance * (1 + 1 / blocks.length));
  return { estimate, low: estimate - reach, high: estimate + reach };
}
