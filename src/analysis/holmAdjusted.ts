/**
 * Probabilities of several tests corrected for looking at all of them, by Holm's step-down method (1979, Scandinavian
 * Journal of Statistics 6, 65–70; from memory): the chance of one false alarm or more stays within the level whatever the
 * tests have to do with each other. In ascending order the k-th of m is multiplied by m − k + 1, none falls below the one
 * before, none exceeds 1.
 *
 * @returns in the order given
 * @throws RangeError for a probability outside 0 to 1
 * @example holmAdjusted([0.01, 0.04, 0.03]) // 0.03, 0.06, 0.06
 */
export function holmAdjusted(probabilities: ArrayLike<number>): number[] {
  const all = Array.from(probabilities);
  const broken = all.find((p) => !(p >= 0 && p <= 1));
  if (broken !== undefined) throw new RangeError(`holmAdjusted requires probabilities from 0 to 1; got ${broken}`);
  const adjusted = new Array<number>(all.length);
  let least = 0;
  const ascending = all.map((p, at) => ({ p, at })).sort((a, b) => a.p - b.p);
  for (const [place, { p, at }] of ascending.entries()) {
    least = Math.max(least, Math.min(1, (all.length - place) * p));
    adjusted[at] = least;
  }
  return adjusted;
}
