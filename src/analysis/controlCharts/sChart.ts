import { chiSquareUpperTail } from "../distributions.ts";
import { sampleStandardDeviation } from "../summary.ts";
import { c4 } from "./constants.ts";

/** The spread within one batch against what its number of samples lets one expect. */
export interface SpreadPoint {
  /** Samples in the batch; the other fields are null where it is 1 or none. */
  readonly count: number;
  readonly standardDeviation: number | null;
  readonly centre: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Chance that a batch as even as the baseline shows more than `high`, if samples are normal: 0.009 for two, 0.004 for ten. */
  readonly falseSignalChance: number | null;
  /** Chance that such a batch shows as much as this one, or more. */
  readonly chance: number | null;
}

/** A chart of the spread within batches. */
export interface SChart {
  /** Spread within a batch, in the measure's unit. */
  readonly sigma: number;
  readonly baselineBatches: number;
  readonly points: readonly SpreadPoint[];
}

type Limits = Pick<SpreadPoint, "centre" | "low" | "high" | "falseSignalChance">;

function limitsOf(count: number, sigma: number, multiplier: number): Limits {
  if (count < 2) return { centre: null, low: null, high: null, falseSignalChance: null };
  const c = c4(count);
  const reach = multiplier * Math.sqrt(1 - c * c);
  return {
    centre: c * sigma,
    low: Math.max(0, (c - reach) * sigma),
    high: (c + reach) * sigma,
    falseSignalChance: chiSquareUpperTail((count - 1) * (c + reach) ** 2, count - 1),
  };
}

/**
 * Chart of the standard deviation within each batch, for batches of unequal numbers of samples: centre c₄(n) σ, limits
 * c₄(n) σ ± multiplier × σ √(1 − c₄(n)²), the lower at 0 or above (e-Handbook 6.3.2.1: B₃ and B₄ where n is always the same).
 *
 * σ is Σ wᵢ sᵢ/c₄(nᵢ) / Σ wᵢ over the baseline, wᵢ = c₄²/(1 − c₄²): the linear unbiased estimate of least variance (Burr
 * 1969, Journal of Quality Technology 1, 163–167; from memory), which is s̄/c₄ where n is always the same.
 *
 * @param samples each batch's samples in time order; a batch of fewer than two has no spread and is passed over
 * @param baseline indices of the batches that set σ; all of them unless given
 * @returns null where no batch of the baseline holds two samples, or none of them varies
 * @throws RangeError for an index that is not among the batches
 */
export function sChart(
  samples: readonly ArrayLike<number>[],
  options: { readonly baseline?: readonly number[]; readonly multiplier?: number } = {},
): SChart | null {
  const { baseline = samples.map((_, at) => at), multiplier = 3 } = options;
  let weights = 0;
  let sum = 0;
  let baselineBatches = 0;
  for (const at of baseline) {
    const batch = samples[at];
    if (!batch) throw new RangeError(`sChart requires baseline indices from 0 to ${samples.length - 1}; got ${at}`);
    if (batch.length < 2) continue;
    const c = c4(batch.length);
    const weight = (c * c) / (1 - c * c);
    sum += (weight * sampleStandardDeviation(batch)) / c;
    weights += weight;
    baselineBatches += 1;
  }
  if (!(sum > 0)) return null;
  const sigma = sum / weights;
  // The same for all batches of as many samples.
  const limits = new Map<number, Limits>();
  const points = samples.map((batch): SpreadPoint => {
    const count = batch.length;
    const known = limits.get(count) ?? limitsOf(count, sigma, multiplier);
    limits.set(count, known);
    const standardDeviation = count < 2 ? null : sampleStandardDeviation(batch);
    const chance =
      standardDeviation === null ? null : chiSquareUpperTail((count - 1) * (standardDeviation / sigma) ** 2, count - 1);
    return { count, standardDeviation, ...known, chance };
  });
  return { sigma, baselineBatches, points };
}
