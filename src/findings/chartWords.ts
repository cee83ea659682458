import type { RuleName } from "../analysis/controlCharts/signal.ts";
import type { ChartedMeasure } from "../report/controlChartResult.ts";
import { print, printNumber, printRange } from "../units/print.ts";

/** What a charted measure is called inside a sentence. */
export const measureName: Readonly<Record<ChartedMeasure, string>> = {
  dry_yield_pct: "yield",
  final_moisture_pct: "moisture",
};

/** What a charted measure is called as a heading. */
export const measureTitle: Readonly<Record<ChartedMeasure, string>> = {
  dry_yield_pct: "Dry-matter yield",
  final_moisture_pct: "Final moisture",
};

/** What raises a signal, as one says it of a signal: `raised by …`. */
export const ruleWords: Readonly<Record<RuleName, string>> = {
  beyondLimits: "a batch beyond the limits",
  weightedMean: "the running mean beyond its limits",
  cumulativeSum: "the cumulative sum beyond its limit",
  eightOnOneSide: "eight in a row on one side",
  twoOfThreeBeyondTwoThirds: "two of three beyond two thirds of the way",
  fourOfFiveBeyondOneThird: "four of five beyond one third of the way",
  sixRisingOrFalling: "six in a row rising or falling",
};

/** What a rule looks for, for whoever chooses among them. */
export const ruleMeaning: Readonly<Record<RuleName, string>> = {
  beyondLimits: "One batch beyond the limits: finds a blunder at once.",
  weightedMean:
    "The running mean, which weighs the latest batches most, beyond its own limits: finds a small, lasting shift.",
  cumulativeSum:
    "The cumulative sum of what lies off the centre beyond its limit: finds the same, and dates its start.",
  eightOnOneSide: "Eight batches in a row on one side of the centre.",
  twoOfThreeBeyondTwoThirds: "Two of three batches beyond two thirds of the way to the same limit.",
  fourOfFiveBeyondOneThird: "Four of five batches beyond one third of the way to the same limit.",
  sixRisingOrFalling: "Six batches in a row, each above the one before, or each below.",
};

/** A difference as one says it: one decimal, or two where one would round too much away. */
export function points(value: number): string {
  const decimals = Math.abs(value) < 0.25 ? 2 : 1;
  return print(Math.abs(value), "percentagePoints", "metric", { decimals });
}

/** A difference to two decimals, for evidence: `0.21 points`. */
export const exactPoints = (value: number): string => print(value, "percentagePoints", "metric", { decimals: 2 });

/** `0.18 to 0.26 points`. */
export const pointsRange = (low: number, high: number): string =>
  printRange(low, high, "percentagePoints", "metric", { decimals: 2 });

/** A level: `91.0 %`. */
export const percent = (value: number, decimals = 1): string => print(value, "percent", "metric", { decimals });

/** A share in per cent with no more digits than it deserves: `0.3 %`, `4 %`, `under 0.1 %`. */
export function sharePercent(value: number): string {
  if (value > 0 && value < 0.1) return `under ${percent(0.1)}`;
  return percent(value, value < 10 && value !== 0 ? 1 : 0);
}

/** A count that is only roughly known, to two figures: `190`, `1500`. */
export function roughly(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`roughly requires a finite number; got ${value}`);
  if (value < 10) return printNumber(value, 0);
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return printNumber(Math.round(value / step) * step, 0);
}
