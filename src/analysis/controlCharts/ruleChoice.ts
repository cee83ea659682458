import type { RuleName } from "./signal.ts";

/** Which rules a chart signals on, and their settings in sigma. */
export interface RuleChoice {
  readonly rules: readonly RuleName[];
  /** Limits of the values lie this many sigma from the centre; thirds of the way are thirds of it. */
  readonly multiplier: number;
  /** Weight and limit of the running weighted mean. */
  readonly weight: number;
  readonly weightedLimit: number;
  /** Reference k and decision h of the cumulative sums. */
  readonly reference: number;
  readonly decision: number;
}

/** All rules, in the order in which a page offers them. */
export const allRules: readonly RuleName[] = [
  "beyondLimits",
  "weightedMean",
  "cumulativeSum",
  "eightOnOneSide",
  "twoOfThreeBeyondTwoThirds",
  "fourOfFiveBeyondOneThird",
  "sixRisingOrFalling",
];

/**
 * The default pair, one beyond the limits and the running weighted mean, or other rules with the usual settings: 3 sigma;
 * weight 0.10 with 2.814 (Lucas and Saccucci 1990); reference 0.5 with 4.77 (Hawkins 1993, from memory).
 *
 * @throws RangeError for no rule, or one that is not known
 */
export function ruleChoice(
  rules: readonly RuleName[] = ["beyondLimits", "weightedMean"],
  settings: Partial<Omit<RuleChoice, "rules">> = {},
): RuleChoice {
  const unknown = rules.find((rule) => !allRules.includes(rule));
  if (unknown !== undefined || rules.length === 0) {
    throw new RangeError(`ruleChoice requires one rule or more of ${allRules.join(", ")}; got ${unknown ?? "none"}`);
  }
  return {
    multiplier: 3,
    weight: 0.1,
    weightedLimit: 2.814,
    reference: 0.5,
    decision: 4.77,
    ...settings,
    rules: allRules.filter((rule) => rules.includes(rule)),
  };
}
