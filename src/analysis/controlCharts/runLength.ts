import { cusumRunLength } from "./cusumRunLength.ts";
import { ewmaRunLength } from "./ewmaRunLength.ts";
import type { RuleChoice } from "./ruleChoice.ts";
import type { RunLengthDistribution } from "./runLengthDistribution.ts";
import { requireStandardised, type Standardised, zoneRunLength } from "./runRuleRunLength.ts";
import { simulatedRunLength } from "./simulatedRunLength.ts";
import { trendRunLength } from "./trendRunLength.ts";
import { zoneChain } from "./zoneChain.ts";

/** How long a choice of rules runs until it signals, and how that is known. */
export interface RunLength {
  readonly distribution: RunLengthDistribution;
  readonly method: "markovChain" | "integralEquation" | "simulation";
  /** Of the mean; 0 where the method is exact. */
  readonly standardError: number;
}

const kept = new Map<string, RunLength>();

/**
 * Run length of a choice of rules on independent normal values whose standardised form has the given shift and spread:
 * by Markov chain for rules on the values, by integral equation for the running weighted mean with or without zone
 * rules and for cumulative sums alone, by seeded simulation for other mixtures. Kept by its arguments.
 *
 * For a shift it counts from a chart that starts with the shift, which is about right for one that starts later (the
 * running sums may then stand a little on the wrong side).
 *
 * @example runLength(ruleChoice(["beyondLimits"])).distribution.mean // 370.398
 * @example runLengthQuantile(runLength(ruleChoice(), { shift: 1.5, spread: 1 }).distribution, 0.95)
 */
export function runLength(choice: RuleChoice, at: Standardised = { shift: 0, spread: 1 }): RunLength {
  requireStandardised(at, "runLength");
  const key = JSON.stringify([choice, at.shift, at.spread]);
  const known = kept.get(key);
  if (known) return known;
  const result = compute(choice, at);
  // A page asks for few; a sweep over many settings must not fill the memory.
  if (kept.size > 500) kept.clear();
  kept.set(key, result);
  return result;
}

function compute(choice: RuleChoice, at: Standardised): RunLength {
  const { rules, weight, weightedLimit, reference, decision } = choice;
  const chain = zoneChain(rules, choice.multiplier);
  const hasTrend = rules.includes("sixRisingOrFalling");
  const hasMean = rules.includes("weightedMean");
  const hasSums = rules.includes("cumulativeSum");
  if (hasSums ? rules.length > 1 : hasMean && hasTrend) {
    return { ...simulatedRunLength(choice, at), method: "simulation" };
  }
  if (hasSums) {
    return { distribution: cusumRunLength({ reference, decision }, at), method: "integralEquation", standardError: 0 };
  }
  if (hasMean) {
    const distribution = ewmaRunLength({ weight, limit: weightedLimit }, chain, at);
    return { distribution, method: "integralEquation", standardError: 0 };
  }
  const distribution = hasTrend ? trendRunLength(chain, at) : zoneRunLength(chain, at);
  return { distribution, method: "markovChain", standardError: 0 };
}
