import { median } from "../../analysis/summary.ts";
import { countedLength } from "../../malting/germination/countedLength.ts";
import { kernelsToSeeLength, kernelsToSeeShares, lengthSeen } from "../../malting/germination/countSize.ts";
import type { AcrospireRun, CountSize } from "../steepGerminationResult.ts";

/** Differences in mean length worth asking about: a tenth of a kernel, half and a quarter of that. */
const LENGTHS = [0.1, 0.05, 0.025];
/** Points of overgrown kernels beyond the usual share. */
const MORE_POINTS = [10, 5, 3];

/** What a count of kernels can show, by how much this house's kernels differ within a count and how many it counts. */
export function countSizeOf(acrospires: readonly AcrospireRun[]): CountSize | null {
  const single = acrospires.flatMap(({ beds }) =>
    beds.flatMap(({ counts }) => {
      const length = counts === null ? null : countedLength(counts);
      return length === null ? [] : [length];
    }),
  );
  if (single.length === 0) return null;
  const usual = median(single.map(({ counted }) => counted));
  // Pooled as variances are: each count by the kernels it can spare.
  let squares = 0;
  let degrees = 0;
  for (const { counted, kernelStandardDeviation } of single) {
    squares += (counted - 1) * kernelStandardDeviation ** 2;
    degrees += counted - 1;
  }
  const kernelStandardDeviation = Math.sqrt(squares / degrees);
  const fromPercent = Math.round(median(acrospires.map(({ overgrownPercent }) => overgrownPercent.estimate)));
  return {
    usual,
    kernelStandardDeviation,
    lengthSeen: lengthSeen(usual, kernelStandardDeviation),
    forLength: LENGTHS.map((difference) => {
      return { difference, kernels: kernelsToSeeLength(difference, kernelStandardDeviation) };
    }),
    forOvergrown: MORE_POINTS.filter((points) => fromPercent + points <= 100).map((points) => {
      const toPercent = fromPercent + points;
      return { fromPercent, toPercent, kernels: kernelsToSeeShares(fromPercent / 100, toPercent / 100) };
    }),
  };
}
