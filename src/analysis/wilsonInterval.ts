import { normalQuantile } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";

/**
 * A share of yes-or-no outcomes with Wilson's score interval (Wilson 1927, Journal of the American Statistical
 * Association 22, 209–212; from memory), which stays within 0 to 1 and does not shrink to a point at 0 or at all of them.
 *
 * @returns shares from 0 to 1
 * @throws RangeError for no trials, or successes that are not a whole number from 0 to `trials`
 * @example wilsonInterval(10, 100) // 0.10, from 0.055 to 0.174
 */
export function wilsonInterval(successes: number, trials: number, level = 0.95): Interval {
  if (!(Number.isInteger(trials) && trials > 0)) {
    throw new RangeError(`wilsonInterval requires at least one trial; got ${trials}`);
  }
  if (!(Number.isInteger(successes) && successes >= 0 && successes <= trials)) {
    throw new RangeError(`wilsonInterval requires successes from 0 to ${trials}; got ${successes}`);
  }
  const z = normalQuantile(0.5 + level / 2);
  const estimate = successes / trials;
  const weight = 1 + (z * z) / trials;
  const centre = (estimate + (z * z) / (2 * trials)) / weight;
  const reach = (z / weight) * Math.sqrt((estimate * (1 - estimate)) / trials + (z * z) / (4 * trials * trials));
  return {
    estimate,
    // At the ends the bound is the end itself; rounding would miss it by a trace.
    low: successes === 0 ? 0 : centre - reach,
    high: successes === trials ? 1 : centre + reach,
  };
}
