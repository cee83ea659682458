import { lagOneAutocorrelation } from "../lagOneAutocorrelation.ts";
import type { Interval } from "../regressionFit.ts";

/** What each value says that the one before it did not already say. */
export interface FirstOrderResiduals {
  readonly coefficient: Interval;
  /** In the measure's unit, in time order; what a chart for related neighbours runs on. */
  readonly residuals: Float64Array;
}

/** Whether neighbours resemble each other enough for a chart to run on residuals; false for fewer than 12 values. */
export function neighboursAreRelated(deviations: ArrayLike<number>): boolean {
  if (deviations.length < leastForAutocorrelation) return false;
  const { low, high } = lagOneAutocorrelation(deviations);
  return low > 0 || high < 0;
}

/** With fewer, the interval holds for nothing: the estimate is biased by about −(1 + 3ρ)/n. */
const leastForAutocorrelation = 12;

/**
 * Residuals of a first-order autoregression, eᵢ = dᵢ − φ dᵢ₋₁, of deviations from the centre. Where the lag-1 interval
 * of a baseline excludes 0 its moving ranges misjudge the spread, and limits drawn from them signal far too often
 * (φ above 0) or too seldom; the residuals are nearly unrelated, so a chart of them keeps its run lengths (e-Handbook
 * 6.3.2 on correlated data; Montgomery, chapter 10; both from memory).
 *
 * φ is the lag-1 autocorrelation of the baseline with its interval. The first value has none before it: its residual is
 * d₀ √(1 − φ²), which has the spread of the others. A lasting shift of size δ shows in full at its first run and as
 * (1 − φ) δ afterwards, so such a chart is slow for small shifts: sizes are to be read from the values, not from here.
 *
 * @param deviations of all values of a phase, in time order
 * @param baseline indices of those that set φ, in time order; at least three
 * @throws RangeError for a baseline of fewer than three or an index outside
 */
export function firstOrderResiduals(
  deviations: ArrayLike<number>,
  baseline: readonly number[] = Array.from(deviations, (_, at) => at),
): FirstOrderResiduals {
  const outside = baseline.find((at) => !(Number.isInteger(at) && at >= 0 && at < deviations.length));
  if (outside !== undefined) {
    throw new RangeError(`firstOrderResiduals requires indices of its ${deviations.length} values; got ${outside}`);
  }
  const coefficient = lagOneAutocorrelation(baseline.map((at) => deviations[at] as number));
  const phi = coefficient.estimate;
  const residuals = Float64Array.from(deviations, (deviation, at) =>
    at === 0 ? deviation * Math.sqrt(1 - phi * phi) : deviation - phi * (deviations[at - 1] as number),
  );
  return { coefficient, residuals };
}
