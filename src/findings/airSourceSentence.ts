import type { KilnHoursResult } from "../report/kilnHoursResult.ts";
import { print } from "../units/print.ts";
import { counted } from "./counted.ts";
import type { Sentence } from "./sentence.ts";

const points = (value: number): string => print(value, "percentagePoints", "metric", { decimals: 1 });

/**
 * Which air the fit goes by, written down by hand or from the weather files, and how far the two lie apart; empty where
 * there is nothing to choose between.
 */
export function airSourceSentence({ airBasis, airCompared }: KilnHoursResult): Sentence {
  if (airCompared === undefined) return [];
  const { logged, weather, difference } = airCompared;
  if (weather === 0 && difference === null) return [];
  const when = airBasis === "at_loading" ? "Air at loading" : "Air over the load";
  const parts = [
    logged === 0 ? null : `as written down for ${counted(logged, "load")}`,
    weather === 0 ? null : `from the weather files for ${counted(weather, "load")}`,
  ].filter((part) => part !== null);
  const used = `${when} is ${parts.join(" and ")}.`;
  if (difference === null) return [used];
  const { loads, median, medianSize } = difference;
  const lean =
    Math.abs(median) < 0.5
      ? "neither reads damper as a rule"
      : `the weather files read ${points(Math.abs(median))} ${median > 0 ? "damper" : "drier"} as a rule`;
  return [
    `${used} Where both are known (${counted(loads, "load")}), half of the loads have the two within ${points(medianSize)} of humidity, and ${lean}.`,
  ];
}
