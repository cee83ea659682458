import type { Interval } from "../../analysis/regressionFit.ts";
import type { ScoreNumber, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure, printMeasureDifference } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";

/** `(28 to 55)` with a blank before it, or nothing where there is no interval. */
export const scoreRange = ({ low, high }: ScoreNumber): string =>
  low === null || high === null ? "" : ` (${printNumber(low, 0)} to ${printNumber(high, 0)})`;

/** `41 in 100`. */
export const inHundred = (score: number): string => `${printNumber(score, 0)}\u00a0in\u00a0100`;

/** A chance from 0 to 1 as one says it: `62 in 100`; never a round 0 or 100 that it is not. */
export function chanceInHundred(chance: number): string {
  if (chance > 0 && chance < 0.005) return "under 1\u00a0in\u00a0100";
  if (chance < 1 && chance >= 0.995) return "over 99\u00a0in\u00a0100";
  return inHundred(100 * chance);
}

/** The same without `in 100`, where a sentence says it once. */
export const bareChance = (chance: number): string => chanceInHundred(chance).replace("\u00a0in\u00a0100", "");

/** `14 of 22 batches (43 to 80 %)`. */
export function metWords(met: number, of: number, share: Interval | null): string {
  const range =
    share === null ? "" : ` (${printNumber(100 * share.low, 0)} to ${printNumber(100 * share.high, 0)}\u00a0%)`;
  return `${printNumber(met, 0)} of ${printNumber(of, 0)}${range}`;
}

/** `0.31 points (0.12 to 0.50)` of a difference in a measure's own unit. */
export function differenceWords(
  name: string,
  { estimate, low, high }: Interval,
  units: UnitSystem,
  signed = false,
): string {
  const measure = maltMeasure(name);
  const bare = (value: number): string => printMeasureDifference(measure, value, units, { bare: true, signed });
  return `${printMeasureDifference(measure, estimate, units, { signed })} (${bare(low)} to ${bare(high)})`;
}

/** Those that have a score, in the report's order: the lowest first. */
export const scored = (scores: readonly VarietyScore[]): readonly VarietyScore[] =>
  scores.filter(({ standing, onTarget, even }) => standing !== "none" && onTarget !== null && even !== null);

/** Points in 100 by which a variety is more even than on target before its aim is called wrong. */
const AIM_GAP = 15;

/** True where the variety repeats itself well enough but about another value than the one asked for. */
export const aimsBeside = ({ onTarget, even }: VarietyScore): boolean =>
  onTarget !== null && even !== null && even.estimate - onTarget.estimate >= AIM_GAP;
