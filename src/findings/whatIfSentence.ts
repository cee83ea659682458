import type { WhatIfEstimate } from "../report/whatIfAnswer.ts";
import { print, printRange } from "../units/print.ts";
import type { Sentence } from "./sentence.ts";

const MINUTES_A_DAY = 1440;
const two = (n: number): string => String(n).padStart(2, "0");

/** `06:40` for minutes after some local midnight, whatever the day. */
export function clockOf(minutes: number): string {
  const whole = Math.round(minutes);
  const ofDay = ((whole % MINUTES_A_DAY) + MINUTES_A_DAY) % MINUTES_A_DAY;
  return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

/** `06:40 the next day`; the day it was loaded is not said. */
export function clockAndDay(minutes: number): string {
  const days = Math.floor(Math.round(minutes) / MINUTES_A_DAY);
  if (days === 0) return clockOf(minutes);
  if (days === 1) return `${clockOf(minutes)} the next day`;
  if (days === -1) return `${clockOf(minutes)} the day before`;
  return `${clockOf(minutes)}, ${Math.abs(days)} days ${days > 0 ? "later" : "before"}`;
}

/** The 90 % interval of the hours, and the clock times it stands for. */
export function whatIfIntervalSentence(answer: WhatIfEstimate): Sentence {
  const { low, high } = answer.kilnHours;
  return [
    `In 90 of 100 such loads it takes ${printRange(low, high, "hours", "metric")}: off between `,
    `${clockAndDay(answer.offEarliest)} and ${clockAndDay(answer.offLatest)}.`,
  ];
}

/** Which of the two models answered, in words. */
export function whatIfModelSentence(answer: WhatIfEstimate): Sentence {
  return answer.model === "drying-air"
    ? ["Reckoned from the water to remove and the drying power of this air."]
    : ["Reckoned from humidity and bed depth."];
}

/** `14.2 h`. */
export const hoursInWords = (answer: WhatIfEstimate): string => print(answer.kilnHours.estimate, "hours", "metric");
