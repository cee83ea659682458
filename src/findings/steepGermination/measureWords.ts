import type { Interval } from "../../analysis/regressionFit.ts";
import { print, printNumber, printRange } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";

/** A share of kernel length: `0.74`. */
export const length = (fraction: number): string => print(fraction, "fraction", "metric");

/** `0.71 to 0.77`. */
export const lengthRange = ({ low, high }: Interval): string => printRange(low, high, "fraction", "metric");

/** Bed or water: `15.5 °C`, `60 °F`. */
export function degrees(celsius: number, units: UnitSystem): string {
  const whole = Math.abs(celsius - Math.round(celsius)) < 0.05;
  return print(celsius, "temperature", units, { decimals: units === "us" || whole ? 0 : 1 });
}

/** Hours of a timetable, to the hour: nobody unloads a bed to the minute. */
export const wholeHours = (hours: number): string => print(hours, "hours", "metric", { decimals: 0 });

/** One degree of the reader's own scale, as one says it: `degree` is 1 K or 5/9 K. */
export const perDegree = (perKelvin: number, units: UnitSystem): number =>
  units === "us" ? perKelvin / 1.8 : perKelvin;

export const degreeWord = (units: UnitSystem): string => (units === "us" ? "degree Fahrenheit" : "degree");

/** A share in whole per cent: counts of a hundred kernels carry no more. */
export const wholePercent = (percent: number): string => print(percent, "percent", "metric", { decimals: 0 });

/** `7 to 18 %`. */
export const wholePercentRange = ({ low, high }: Interval): string => `${printNumber(low, 0)} to ${wholePercent(high)}`;

/** The middle one of some values; null without any. */
export function middleOf(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half];
  if (upper === undefined) return null;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[half - 1] ?? upper)) / 2;
}
