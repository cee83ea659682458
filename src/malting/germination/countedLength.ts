import { studentTQuantile } from "../../analysis/distributions.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { ACROSPIRE_MIDPOINTS, type AcrospireCounts, acrospireCounted } from "../acrospire.ts";

/** A class is a quarter of a kernel wide. */
const CLASS_WIDTH = 0.25;

/** Mean acrospire length from one count of kernels, fraction of kernel length. */
export interface CountedLength {
  readonly counted: number;
  readonly mean: number;
  /** From kernel to kernel. */
  readonly kernelStandardDeviation: number;
  /** Of the mean, from the count's being a sample. */
  readonly standardError: number;
}

/** No acrospire is shorter than nothing, and what has outgrown its kernel counts 1.125. */
const LONGEST = ACROSPIRE_MIDPOINTS.over;

/**
 * Mean length with its counting error: kernels fall into the classes as a multinomial, so that the mean Σ mₖ nₖ/n has
 * variance (Σ mₖ² pₖ − mean²)/(n − 1). The spread from kernel to kernel is never taken below that of lengths evenly spread
 * over one class, a quarter/√12: a count that is all in one class does not say that its kernels are all alike.
 *
 * @returns null for fewer than two kernels, whose spread cannot be told
 * @throws {RangeError} when a count is negative or not a whole number
 */
export function countedLength(counts: AcrospireCounts): CountedLength | null {
  const counted = acrospireCounted(counts);
  if (counted < 2) return null;
  const classes = Object.entries(ACROSPIRE_MIDPOINTS) as [keyof AcrospireCounts, number][];
  let sum = 0;
  for (const [name, length] of classes) sum += counts[name] * length;
  const mean = sum / counted;
  let squares = 0;
  for (const [name, length] of classes) squares += counts[name] * (length - mean) ** 2;
  const variance = Math.max(squares / (counted - 1), CLASS_WIDTH ** 2 / 12);
  return {
    counted,
    mean,
    kernelStandardDeviation: Math.sqrt(variance),
    standardError: Math.sqrt(variance / counted),
  };
}

/** The 95 % interval of a counted mean by Student's t, kept between no acrospire and all overgrown. */
export function countedLengthInterval({ counted, mean, standardError }: CountedLength, level = 0.95): Interval {
  const reach = studentTQuantile(0.5 + level / 2, counted - 1) * standardError;
  return { estimate: mean, low: Math.max(0, mean - reach), high: Math.min(LONGEST, mean + reach) };
}
