import { normalDraws } from "../normalDraws.ts";
import { seededRandom } from "../seededRandom.ts";
import type { RuleChoice } from "./ruleChoice.ts";
import type { RunLengthDistribution } from "./runLengthDistribution.ts";
import type { Standardised } from "./runRuleRunLength.ts";
import { zoneChain } from "./zoneChain.ts";

/** A run-length distribution from seeded histories, with the standard error of its mean. */
export interface SimulatedRunLength {
  readonly distribution: RunLengthDistribution;
  readonly standardError: number;
}

/** Steps after which no further history is begun, for each history asked for. */
const stepsEach = 400;

/**
 * Run length of any choice of rules by seeded histories, each from a fresh start until a rule fires. For choices that
 * no chain here holds together, such as cumulative sums with other rules. With 10,000 of them the standard error of
 * the mean is about 1 part in 100. The same choice always draws the same histories.
 */
export function simulatedRunLength(choice: RuleChoice, at: Standardised, histories = 10_000): SimulatedRunLength {
  const mostSteps = stepsEach * histories;
  const random = seededRandom(19_560_412);
  const draw = normalDraws(random);
  const history = historyOf(choice, () => at.shift + at.spread * draw());
  const lengths: number[] = [];
  let steps = 0;
  while (lengths.length < histories && steps < mostSteps) {
    const length = history(mostSteps - steps);
    if (length === null) break;
    lengths.push(length);
    steps += length;
  }
  // Histories cut off count by the steps that they lasted: mean = steps / signals, as of any constant rate.
  const signals = Math.max(1, lengths.length);
  const mean = (lengths.length < histories ? mostSteps : steps) / signals;
  const longest = lengths.reduce((most, length) => Math.max(most, length), 1);
  const ended = new Float64Array(longest + 1);
  for (const length of lengths) ended[length] = (ended[length] as number) + 1 / signals;
  // The empirical curve as far as it is well known, then the rate that gives the mean.
  const survival = [1];
  let sum = 1;
  for (let run = 1; run <= longest; run += 1) {
    const left = (survival[run - 1] as number) - (ended[run] as number);
    if (left < 0.02) break;
    survival.push(left);
    sum += left;
  }
  const last = survival[survival.length - 1] as number;
  const tail = Math.max(0, mean - sum);
  return {
    distribution: { mean, survival: Float64Array.from(survival), tailRatio: tail / (tail + last) },
    standardError: mean / Math.sqrt(signals),
  };
}

/** One history after another: the run at which the choice first signals, or null where `most` runs go by without. */
function historyOf(choice: RuleChoice, draw: () => number): (most: number) => number | null {
  const { weight, weightedLimit, reference, decision } = choice;
  const chain = zoneChain(choice.rules, choice.multiplier);
  const watchTrend = choice.rules.includes("sixRisingOrFalling");
  const watchMean = choice.rules.includes("weightedMean");
  const watchSums = choice.rules.includes("cumulativeSum");
  return (most) => {
    let state = 0;
    let before = Number.NaN;
    let rising = 1;
    let falling = 1;
    let mean = 0;
    let variance = 0;
    let upper = 0;
    let lower = 0;
    for (let run = 1; run <= most; run += 1) {
      const value = draw();
      let zone = 0;
      while (zone < chain.edges.length && value > (chain.edges[zone] as number)) zone += 1;
      state = chain.next[state * chain.zones + zone] as number;
      if (state < 0) return run;
      if (watchTrend) {
        rising = value > before ? rising + 1 : 1;
        falling = value < before ? falling + 1 : 1;
        before = value;
        if (rising >= 6 || falling >= 6) return run;
      }
      if (watchMean) {
        mean += weight * (value - mean);
        variance = weight * weight + (1 - weight) ** 2 * variance;
        if (mean * mean > weightedLimit * weightedLimit * variance) return run;
      }
      if (watchSums) {
        upper = Math.max(0, upper + value - reference);
        lower = Math.max(0, lower - value - reference);
        if (upper > decision || lower > decision) return run;
      }
    }
    return null;
  };
}
