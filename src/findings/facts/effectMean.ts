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
