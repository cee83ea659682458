import { normalQuantile, studentTQuantile } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";
import { mean, sampleStandardDeviation } from "./summary.ts";

/** How far two methods of measuring one thing differ. */
export interface Agreement {
  readonly pairs: number;
  /** Mean difference, with the interval of the mean. */
  readonly bias: Interval;
  readonly standardDeviation: number;
  /** Between these lie 95 % of single differences, were the differences normal and bias and spread known. */
  readonly limits: readonly [number, number];
  /** Standard error of either limit. */
  readonly limitStandardError: number;
}

/**
 * Bland and Altman's limits of agreement (1986, Lancet i 307–310; from memory): mean difference d ± z s, their standard
 * error √(s²/n + z²s²/(2(n − 1))) (1999, Statistical Methods in Medical Research 8, 135–160; from memory). Use it where the
 * same things were measured in two ways, one difference a thing.
 *
 * @param differences one way less the other, each pair once, in the unit of both
 * @throws RangeError for fewer than two differences, or one that is not finite
 */
export function limitsOfAgreement(differences: ArrayLike<number>, level = 0.95): Agreement {
  const pairs = differences.length;
  if (pairs < 2) throw new RangeError(`limitsOfAgreement requires at least two differences; got ${pairs}`);
  const broken = Array.from(differences).find((difference) => !Number.isFinite(difference));
  if (broken !== undefined) throw new RangeError(`limitsOfAgreement requires finite differences; got ${broken}`);
  const estimate = mean(differences);
  const standardDeviation = sampleStandardDeviation(differences);
  const reach = (studentTQuantile(0.5 + level / 2, pairs - 1) * standardDeviation) / Math.sqrt(pairs);
  const z = normalQuantile(0.5 + level / 2);
  return {
    pairs,
    bias: { estimate, low: estimate - reach, high: estimate + reach },
    standardDeviation,
    limits: [estimate - z * standardDeviation, estimate + z * standardDeviation],
    limitStandardError: standardDeviation * Math.sqrt(1 / pairs + (z * z) / (2 * (pairs - 1))),
  };
}
