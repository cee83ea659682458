import { mean } from "../summary.ts";
import { movingRangeSpread } from "./movingRangeSpread.ts";
import { sChart } from "./sChart.ts";

/** Batch means to be charted as single values. */
export interface MeansAsIndividuals {
  /** One for each batch; null where it has no sample. */
  readonly means: readonly (number | null)[];
  readonly counts: readonly number[];
  /** Standard error of a mean if only the spread within batches were at work, for the usual number of samples; null where none is known. */
  readonly standardErrorFromWithin: number | null;
  /** Spread of the means from their moving ranges; null for fewer than two batches. */
  readonly spreadOfMeans: number | null;
  /** How much narrower limits from the spread within would be than those from the means: 3 means a third as wide. */
  readonly narrowerBy: number | null;
}

/**
 * Means of several samples a batch, for an individuals chart. Limits from the spread within batches suppose that batches
 * differ by nothing else; drying differs from night to night as well, and such limits signal on good batches (e-Handbook
 * 6.3.2.1 speaks of subgroups that hold all of the usual variation; individuals charts of means for batches: Wheeler,
 * from memory). So the means are treated as single values, and `narrowerBy` says how wrong the other way would be.
 *
 * The usual number of samples is taken as the harmonic mean of the counts, which is the one that the variances of the
 * means average to.
 */
export function meansAsIndividuals(samples: readonly ArrayLike<number>[]): MeansAsIndividuals {
  const means = samples.map((batch) => (batch.length === 0 ? null : mean(batch)));
  const counts = samples.map(({ length }) => length);
  const sampled = counts.filter((count) => count > 0);
  const within = sChart(samples);
  const inverse = sampled.reduce((sum, count) => sum + 1 / count, 0) / sampled.length;
  const standardErrorFromWithin = within === null ? null : within.sigma * Math.sqrt(inverse);
  const spread = movingRangeSpread([means.filter((value): value is number => value !== null)]);
  return {
    means,
    counts,
    standardErrorFromWithin,
    spreadOfMeans: spread?.sigma ?? null,
    narrowerBy: spread === null || standardErrorFromWithin === null ? null : spread.sigma / standardErrorFromWithin,
  };
}
