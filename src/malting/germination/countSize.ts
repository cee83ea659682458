import { normalQuantile } from "../../analysis/distributions.ts";

export interface CountSizeOptions {
  /** Chance of seeing a difference where there is none; 0.05 where not given. */
  readonly level?: number;
  /** Chance of seeing the difference where it is there; 0.8 where not given. */
  readonly power?: number;
}

function quantiles({ level = 0.05, power = 0.8 }: CountSizeOptions): readonly [number, number] {
  return [normalQuantile(1 - level / 2), normalQuantile(power)];
}

/**
 * How many kernels each of two counts needs so that a difference between shares `from` and `to` will mostly be seen:
 * (z √(2 p̄q̄) + z′ √(p₁q₁ + p₂q₂))²/(p₁ − p₂)² (Fleiss, Statistical Methods for Rates and Proportions, from memory; it is
 * what R's power.prop.test solves).
 *
 * @param from a share from 0 to 1
 * @param to another
 * @returns whole kernels, rounded up
 * @throws RangeError for shares outside 0 to 1, or two that are the same
 */
export function kernelsToSeeShares(from: number, to: number, options: CountSizeOptions = {}): number {
  if (!(from >= 0 && from <= 1 && to >= 0 && to <= 1 && from !== to)) {
    throw new RangeError(`kernelsToSeeShares requires two different shares from 0 to 1; got ${from} and ${to}`);
  }
  const [zLevel, zPower] = quantiles(options);
  const middle = (from + to) / 2;
  const reach = zLevel * Math.sqrt(2 * middle * (1 - middle)) + zPower * Math.sqrt(from * (1 - from) + to * (1 - to));
  return Math.ceil((reach / (from - to)) ** 2);
}

/**
 * How many kernels each of two counts needs so that a difference in mean length will mostly be seen:
 * 2 (z + z′)² s²/d² + z²/4, the last for Student's t in place of the normal (Guenther 1981, The American Statistician 35,
 * 243–244; from memory).
 *
 * @param difference in mean length
 * @param kernelStandardDeviation from kernel to kernel, in the same unit
 * @returns whole kernels, rounded up
 * @throws RangeError unless both are above 0
 */
export function kernelsToSeeLength(
  difference: number,
  kernelStandardDeviation: number,
  options: CountSizeOptions = {},
): number {
  if (!(difference > 0 && kernelStandardDeviation > 0)) {
    throw new RangeError(
      `kernelsToSeeLength requires a difference and a spread above 0; got ${difference} and ${kernelStandardDeviation}`,
    );
  }
  const [zLevel, zPower] = quantiles(options);
  const ratio = kernelStandardDeviation / difference;
  return Math.ceil(2 * (zLevel + zPower) ** 2 * ratio * ratio + (zLevel * zLevel) / 4);
}

/**
 * The difference in mean length that two counts of so many kernels each will mostly show; the inverse of
 * {@link kernelsToSeeLength} before rounding.
 *
 * @throws RangeError for a spread not above 0, or too few kernels for any difference
 */
export function lengthSeen(kernels: number, kernelStandardDeviation: number, options: CountSizeOptions = {}): number {
  const [zLevel, zPower] = quantiles(options);
  const left = kernels - (zLevel * zLevel) / 4;
  if (!(left > 0 && kernelStandardDeviation > 0)) {
    throw new RangeError(`lengthSeen requires more kernels and a spread above 0; got ${kernels} kernels`);
  }
  return kernelStandardDeviation * (zLevel + zPower) * Math.sqrt(2 / left);
}
