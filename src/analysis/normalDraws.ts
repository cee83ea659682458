import type { SeededRandom } from "./seededRandom.ts";

/**
 * Standard normal numbers by Marsaglia's polar method, for simulations. Engines differ in the last place of the
 * logarithm, so take them where a table is printed, not where a page decides on one.
 */
export function normalDraws(random: SeededRandom): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const u = 2 * random.uniform() - 1;
      const v = 2 * random.uniform() - 1;
      const s = u * u + v * v;
      if (s >= 1 || s === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(s)) / s);
      spare = v * scale;
      return u * scale;
    }
  };
}
