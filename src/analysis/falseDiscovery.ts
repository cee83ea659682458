/**
 * Probabilities of several tests corrected so that of those called real at a level no more than that share is chance, by
 * Benjamini and Hochberg (1995, Journal of the Royal Statistical Society B 57, 289–300; from memory): in ascending order
 * the k-th of m is multiplied by m/k, and none exceeds the one after it. For lists to look through; where a single
 * false alarm costs, take `holmAdjusted`.
 *
 * @returns in the order given
 * @throws RangeError for a probability outside 0 to 1
 * @example falseDiscoveryAdjusted([0.01, 0.04, 0.03]) // 0.03, 0.04, 0.04
 */
export function falseDiscoveryAdjusted(probabilities: ArrayLike<number>): number[] {
  const all = Array.from(probabilities);
  const broken = all.find((p) => !(p >= 0 && p <= 1));
  if (broken !== undefined) {
    throw new RangeError(`falseDiscoveryAdjusted requires probabilities from 0 to 1; got ${broken}`);
  }
  const adjusted = new Array<number>(all.length);
  let least = 1;
  const descending = all.map((p, at) => ({ p, at })).sort((a, b) => b.p - a.p);
  for (const [place, { p, at }] of descending.entries()) {
    least = Math.min(least, (all.length / (all.length - place)) * p);
    adjusted[at] = least;
  }
  return adjusted;
}
