import { type ChartSeries, requireSeries, tieTolerance } from "./chartSeries.ts";
import { type Firing, joinFirings, type RuleName, type Signal } from "./signal.ts";

/** The rules that look at single values and short runs of them. */
export type RunRuleName = Exclude<RuleName, "weightedMean" | "cumulativeSum">;

/**
 * Where a rule on the values themselves signals. "Beyond" is strict: a value on a line is not beyond it, and one on
 * the centre is on neither side.
 *
 * - `beyondLimits`: one beyond the limits, `multiplier` sigma from the centre;
 * - `eightOnOneSide`: 8 in a row on one side of the centre;
 * - `twoOfThreeBeyondTwoThirds`: 2 of 3 in a row beyond two thirds of the way to one limit;
 * - `fourOfFiveBeyondOneThird`: 4 of 5 in a row beyond one third of the way to one limit;
 * - `sixRisingOrFalling`: 6 in a row, each above the one before, or each below.
 *
 * The first four are the zone rules of the Statistical Quality Control Handbook (1956), the last is from Nelson (1984,
 * Journal of Quality Technology 16, 237–239), both through secondary copies. The last of the "2 of 3" or "4 of 5" must itself be
 * beyond. A trend is of the standardised values, which for one variety is that of the values.
 *
 * @throws RangeError for a series that does not hold together or a multiplier that is not positive
 */
export function runRuleSignals(series: ChartSeries, rule: RunRuleName, multiplier = 3): Signal[] {
  requireSeries(series, "runRuleSignals");
  if (!(multiplier > 0)) throw new RangeError(`runRuleSignals requires a positive multiplier; got ${multiplier}`);
  const { deviations, sigmas } = series;
  const standardised = Float64Array.from(deviations, (deviation, at) => deviation / (sigmas[at] as number));
  return joinFirings(rule, firingsOf(standardised, rule, multiplier), deviations);
}

function firingsOf(z: Float64Array, rule: RunRuleName, multiplier: number): Firing[] {
  switch (rule) {
    case "beyondLimits":
      return someOfLast(z, 1, 1, multiplier);
    case "twoOfThreeBeyondTwoThirds":
      return someOfLast(z, 2, 3, (2 / 3) * multiplier);
    case "fourOfFiveBeyondOneThird":
      return someOfLast(z, 4, 5, multiplier / 3);
    case "eightOnOneSide":
      return someOfLast(z, 8, 8, 0);
    case "sixRisingOrFalling":
      return trends(z, 6);
  }
}

/** Fires where a value is beyond the line and, with it, `least` of the last `window` are, on the same side. */
function someOfLast(z: Float64Array, least: number, window: number, drawn: number): Firing[] {
  const line = drawn + tieTolerance;
  const firings: Firing[] = [];
  for (let at = 0; at < z.length; at += 1) {
    const side = (z[at] as number) > line ? 1 : (z[at] as number) < -line ? -1 : 0;
    if (side === 0) continue;
    let beyond = 0;
    let from = at;
    for (let back = at; back >= Math.max(0, at - window + 1); back -= 1) {
      if (side * (z[back] as number) > line) {
        beyond += 1;
        from = back;
      }
    }
    if (beyond >= least) firings.push({ from, at, direction: side > 0 ? "above" : "below" });
  }
  return firings;
}

function trends(z: Float64Array, length: number): Firing[] {
  const firings: Firing[] = [];
  let rising = 1;
  let falling = 1;
  for (let at = 1; at < z.length; at += 1) {
    const step = (z[at] as number) - (z[at - 1] as number);
    rising = step > tieTolerance ? rising + 1 : 1;
    falling = step < -tieTolerance ? falling + 1 : 1;
    if (rising >= length) firings.push({ from: at - length + 1, at, direction: "rising" });
    if (falling >= length) firings.push({ from: at - length + 1, at, direction: "falling" });
  }
  return firings;
}
