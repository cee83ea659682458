/**
 * Kernels counted in each class of acrospire length, as a fraction of the kernel's own length. The classes are those in
 * use with European laboratory methods (from memory).
 */
export interface AcrospireCounts {
  readonly none: number;
  readonly toQuarter: number;
  readonly toHalf: number;
  readonly toThreeQuarters: number;
  readonly toFull: number;
  readonly over: number;
}

/**
 * The length that stands for each class: its middle. What has outgrown the kernel is counted 1.125, as the log format
 * says.
 */
export const ACROSPIRE_MIDPOINTS: Readonly<Record<keyof AcrospireCounts, number>> = {
  none: 0,
  toQuarter: 0.125,
  toHalf: 0.375,
  toThreeQuarters: 0.625,
  toFull: 0.875,
  over: 1.125,
};

const CLASSES = Object.keys(ACROSPIRE_MIDPOINTS) as readonly (keyof AcrospireCounts)[];

/** How many kernels were counted. @throws {RangeError} when a count is negative or not a whole number */
export function acrospireCounted(counts: AcrospireCounts): number {
  let total = 0;
  for (const name of CLASSES) {
    const count = counts[name];
    if (!(Number.isInteger(count) && count >= 0)) {
      throw new RangeError(`kernels are counted in whole numbers from 0; got ${count} for ${name}`);
    }
    total += count;
  }
  return total;
}

/**
 * Mean acrospire length as a fraction of kernel length, from the class counts and {@link ACROSPIRE_MIDPOINTS}; null when
 * nothing was counted.
 *
 * @throws {RangeError} when a count is negative or not a whole number
 */
export function meanAcrospireLength(counts: AcrospireCounts): number | null {
  const total = acrospireCounted(counts);
  if (total === 0) return null;
  let sum = 0;
  for (const name of CLASSES) sum += counts[name] * ACROSPIRE_MIDPOINTS[name];
  return sum / total;
}

/** Share of overgrown kernels, %; null when nothing was counted. */
export function overgrownPercent(counts: AcrospireCounts): number | null {
  const total = acrospireCounted(counts);
  return total === 0 ? null : (100 * counts.over) / total;
}
