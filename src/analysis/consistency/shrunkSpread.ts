/** Squares about a mean, or about several, and the degrees of freedom that they carry. */
export interface SquaresAboutMean {
  readonly squares: number;
  readonly degreesOfFreedom: number;
}

export interface ShrunkSpread {
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

/**
 * How many degrees of freedom the other varieties' spread counts for. With a handful of varieties the data cannot say
 * how alike spreads are, so the weight is fixed and not estimated: with 5 batches half of the spread is the others', with
 * 20 a sixth.
 */
export const POOLED_WEIGHT = 4;

/**
 * A variance shrunk to the pooled one: s̃² = (d₀s₀² + Σ(x − x̄)²) / (d₀ + n − 1) with d₀ + n − 1 degrees of freedom, the
 * posterior under a scaled inverse chi-square prior whose scale is taken from the other varieties (Gelman and others,
 * Bayesian Data Analysis, 3rd ed., 2.6 and 3.2; Smyth 2004, Statistical Applications in Genetics and Molecular Biology
 * 3(1), 3, whose d₀ is estimated; both from memory). d₀ is {@link POOLED_WEIGHT}, and never more than `others` carries.
 *
 * @returns null where nobody has scattered yet: no degrees of freedom at all
 */
export function shrinkSpread(own: SquaresAboutMean, others: SquaresAboutMean): ShrunkSpread | null {
  const weight = Math.min(POOLED_WEIGHT, others.degreesOfFreedom);
  const degreesOfFreedom = weight + own.degreesOfFreedom;
  if (degreesOfFreedom === 0) return null;
  const pooled = weight === 0 ? 0 : (weight * others.squares) / others.degreesOfFreedom;
  return { variance: (pooled + own.squares) / degreesOfFreedom, degreesOfFreedom };
}
