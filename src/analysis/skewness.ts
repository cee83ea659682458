import { normalCdf } from "./distributions.ts";
import { mean } from "./summary.ts";

/** Skewness of a sample beside what a normal process would show. */
export interface Skewness {
  /** √b₁ = m₃/m₂^1.5 of the sample; 0 where it is symmetrical, above 0 where the long tail is on the high side. */
  readonly skewness: number;
  /** D'Agostino's normal transformation of it. */
  readonly z: number;
  /** Two-sided chance of a skewness as far from 0 from a normal process. */
  readonly p: number;
}

/**
 * D'Agostino's test of skewness (1970, Biometrika 57, 679–681; the form of D'Agostino, Belanger and D'Agostino 1990,
 * American Statistician 44, 316–321; from memory, checked against SciPy's documented examples). Use it on a baseline
 * before its limits are believed: limits three sigma off suppose that values are about normal.
 *
 * @returns null for fewer than 8 values, where the transformation does not hold, or for values that do not vary
 */
export function skewnessTest(values: ArrayLike<number>): Skewness | null {
  const n = values.length;
  if (n < 8) return null;
  const centre = mean(values);
  let second = 0;
  let third = 0;
  for (const value of Array.from(values)) {
    const deviation = value - centre;
    second += deviation ** 2 / n;
    third += deviation ** 3 / n;
  }
  if (second === 0) return null;
  const skewness = third / second ** 1.5;
  const y = skewness * Math.sqrt(((n + 1) * (n + 3)) / (6 * (n - 2)));
  const kurtosis = (3 * (n * n + 27 * n - 70) * (n + 1) * (n + 3)) / ((n - 2) * (n + 5) * (n + 7) * (n + 9));
  const square = Math.sqrt(2 * (kurtosis - 1)) - 1;
  const delta = 1 / Math.sqrt(Math.log(square) / 2);
  const alpha = Math.sqrt(2 / (square - 1));
  const z = delta * Math.asinh(y / alpha);
  return { skewness, z, p: 2 * normalCdf(-Math.abs(z)) };
}
