/**
 * Number of lags that Newey–West sums take where nobody chose one: ⌊4 (n/100)^(2/9)⌋, the usual rule of thumb after
 * Newey and West (1994, Review of Economic Studies 61, 631–653; from memory), and fewer than `count`.
 */
export function automaticLags(count: number): number {
  if (!(Number.isInteger(count) && count > 0)) {
    throw new RangeError(`automaticLags requires a positive whole number of values; got ${count}`);
  }
  // The small addition keeps a power that should be whole from falling just below it in one engine only.
  return Math.min(count - 1, Math.floor(4 * (count / 100) ** (2 / 9) + 1e-9));
}

/**
 * Variance of the *sum* of a series whose neighbours may be related: Σs² + 2 Σ_l (1 − l/(L + 1)) Σ sₜsₜ₋ₗ with Bartlett
 * weights, which is never negative (Newey and West 1987, Econometrica 55, 703–708; from memory). The series is taken as
 * having mean 0: centre it first where it has not.
 *
 * @throws RangeError for a negative or broken number of lags
 */
export function longRunSumVariance(series: ArrayLike<number>, lags: number): number {
  if (!(Number.isInteger(lags) && lags >= 0)) {
    throw new RangeError(`longRunSumVariance requires a whole number of lags, 0 or more; got ${lags}`);
  }
  let total = 0;
  for (let lag = 0; lag <= lags; lag += 1) {
    let products = 0;
    for (let row = lag; row < series.length; row += 1)
      products += (series[row] as number) * (series[row - lag] as number);
    total += lag === 0 ? products : 2 * (1 - lag / (lags + 1)) * products;
  }
  // Never below 0 in exact arithmetic; rounding may leave a trace under it.
  return Math.max(0, total);
}

/**
 * Newey–West standard errors of least-squares coefficients. `influence` holds the rows (X′X)⁻¹xᵢ, row-major with
 * `parameters` entries each, and `residuals` stands in time order. With n/(n − p) for the degrees of freedom spent, as
 * is common (from memory); with 0 lags this is the form called HC1.
 */
export function neweyWest(
  influence: Float64Array,
  residuals: Float64Array,
  parameters: number,
  lags: number,
): Float64Array {
  const count = residuals.length;
  const adjustment = count / (count - parameters);
  return Float64Array.from({ length: parameters }, (_, term) => {
    const scores = residuals.map((residual, row) => residual * (influence[row * parameters + term] as number));
    return Math.sqrt(adjustment * longRunSumVariance(scores, lags));
  });
}
