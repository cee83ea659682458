import type { ChartSignal } from "../../report/controlChartResult.ts";
import { printDateInFull } from "../../units/instant.ts";
import type { FigureSettings } from "../figureSettings.ts";
import { countOf } from "../listedRows.ts";
import type { ChartWords } from "./chartWords.ts";

export const isUpwards = ({ direction }: Pick<ChartSignal, "direction">): boolean =>
  direction === "above" || direction === "rising";

/** What a signal is, without its size: `below the limits`, `running mean high`, `9 in a row above the centre`. */
export function signalName({ rule, direction, runs }: Pick<ChartSignal, "rule" | "direction" | "runs">): string {
  const up = isUpwards({ direction });
  switch (rule) {
    case "beyondLimits":
      return `${up ? "above" : "below"} the limits`;
    case "weightedMean":
      return `running mean ${up ? "high" : "low"}`;
    case "cumulativeSum":
      return `cumulative sum ${up ? "high" : "low"}`;
    case "eightOnOneSide":
      return `${runs.length} in a row ${up ? "above" : "below"} the centre`;
    case "twoOfThreeBeyondTwoThirds":
      return `2 of 3 past two thirds of the way ${up ? "up" : "down"}`;
    case "fourOfFiveBeyondOneThird":
      return `4 of 5 past a third of the way ${up ? "up" : "down"}`;
    case "sixRisingOrFalling":
      return `${runs.length} in a row, each ${up ? "higher" : "lower"}`;
  }
}

/** How many batches a signal covers and how large it is: `6 batches, +0.6 points`; one batch is not counted. */
export function signalSize(signal: ChartSignal, words: ChartWords): string {
  const saysCount = signal.runs.length === 1 || /^\d/.test(signalName(signal));
  const count = saysCount ? "" : `${countOf(signal.runs.length, "batch")}, `;
  return `${count}${words.difference(signal.size)}`;
}

/** The words at a signal's ring: `below the limits, −2.6 points`, `running mean high, 6 batches, +0.6 points`. */
export const signalLabel = (signal: ChartSignal, words: ChartWords): string =>
  `${signalName(signal)}, ${signalSize(signal, words)}`;

/** A signal in a sentence: `24-117 on 3 September 2024 below the limits (−2.6 points)`. */
export function signalSentence(signal: ChartSignal, words: ChartWords, { timeZone }: FigureSettings): string {
  const size = words.difference(signal.size);
  const from = printDateInFull(signal.from, timeZone);
  const [run] = signal.runs;
  if (signal.runs.length < 2) return `${run} on ${from} ${signalName(signal)} (${size})`;
  const last = printDateInFull(signal.to, timeZone);
  return `${signalName(signal)} over ${countOf(signal.runs.length, "batch")} from ${from} to ${last} (${size})`;
}
