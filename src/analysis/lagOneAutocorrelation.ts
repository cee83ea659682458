import { normalQuantile } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";
import { mean } from "./summary.ts";

/**
 * Correlation of each value with the one before it, in the order given, with an interval. Use it on residuals in time
 * order to see whether neighbours resemble each other.
 *
 * The estimate is Σ(yᵢ − ȳ)(yᵢ₋₁ − ȳ) / Σ(yᵢ − ȳ)², the form that NIST certifies. The interval is
 * r ± z √((1 − r²)/n), cut at −1 and 1: the large-sample variance of the estimate in a first-order autoregression (Box
 * and Jenkins, from memory; it is Bartlett's 1/n where there is no correlation). In small samples r is biased downwards,
 * by about (1 + 3ρ)/n and more so for the residuals of a regression, so that with a dozen values a weak positive
 * correlation is easily missed. Values that do not vary have none: 0 within (−1, 1).
 *
 * @throws RangeError for fewer than 3 values
 */
export function lagOneAutocorrelation(values: ArrayLike<number>, level = 0.95): Interval {
  const count = values.length;
  if (count < 3) throw new RangeError(`lagOneAutocorrelation requires at least three values; got ${count}`);
  const centre = mean(values);
  let squares = 0;
  let products = 0;
  let before = 0;
  for (const value of Array.from(values)) {
    const deviation = value - centre;
    squares += deviation * deviation;
    products += deviation * before;
    before = deviation;
  }
  if (squares === 0) return { estimate: 0, low: -1, high: 1 };
  const estimate = products / squares;
  const reach = normalQuantile(0.5 + level / 2) * Math.sqrt((1 - estimate * estimate) / count);
  return { estimate, low: Math.max(-1, estimate - reach), high: Math.min(1, estimate + reach) };
}
