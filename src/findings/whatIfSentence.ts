import type { WhatIfEstimate } from "../report/whatIfAnswer.ts";
import { print, printRange } from "../units/print.ts";
import { joinSentences, type Sentence, strong } from "./sentence.ts";

const MINUTES_A_DAY = 1440;
/** No estimate of a kiln is good to the minute; clock times are said to ten. */
const STEP = 10;
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

const nearest = (minutes: number): number => Math.round(minutes / STEP) * STEP;
const earlier = (minutes: number): number => Math.floor(minutes / STEP) * STEP;
const later = (minutes: number): number => Math.ceil(minutes / STEP) * STEP;

/** Minutes after midnight at which the load of an estimate goes in. */
export const startOf = (answer: WhatIfEstimate): number => Math.round(answer.offAt - answer.kilnHours.estimate * 60);

/**
 * The estimate with its clock times said to ten minutes: middles to the nearest, intervals outwards, and the latest start
 * to the earlier, so that rounding never promises more than the interval does.
 */
export function toTenMinutes(answer: WhatIfEstimate): WhatIfEstimate {
  const start = startOf(answer);
  const { dryingHours } = answer;
  const hoursTo = (round: (minutes: number) => number, hours: number): number =>
    (round(start + hours * 60) - start) / 60;
  return {
    ...answer,
    dryingHours:
      dryingHours === null
        ? null
        : {
            estimate: hoursTo(nearest, dryingHours.estimate),
            low: hoursTo(earlier, dryingHours.low),
            high: hoursTo(later, dryingHours.high),
          },
    readyAt: answer.readyAt === null ? null : nearest(answer.readyAt),
    offAt: nearest(answer.offAt),
    offEarliest: earlier(answer.offEarliest),
    offLatest: later(answer.offLatest),
    latestStart: answer.latestStart === null ? null : earlier(answer.latestStart),
  };
}

/** `Ready for the ramp about 04:40, off the kiln about 08:10 the next day.` */
export function whatIfSentence(answer: WhatIfEstimate): Sentence {
  const { readyAt, offAt } = toTenMinutes(answer);
  const off: Sentence = [`${readyAt === null ? "Off" : "off"} the kiln about `, strong(clockAndDay(offAt)), "."];
  return readyAt === null ? off : ["Ready for the ramp about ", strong(clockAndDay(readyAt)), ", ", ...off];
}

/** `11.8 to 13.6 h in 90 of 100 such loads`. */
export function hoursBetweenSentence({ kilnHours: { low, high } }: WhatIfEstimate): Sentence {
  return [`${printRange(low, high, "hours", "metric")} in 90 of 100 such loads`];
}

/** When to load at the latest to be off by a wanted time; empty where none is wanted. */
export function latestStartSentence(answer: WhatIfEstimate): Sentence {
  const { latestStart } = toTenMinutes(answer);
  if (latestStart === null || answer.latestStart === null) return [];
  const wanted = answer.latestStart + answer.kilnHours.high * 60;
  return [`To be off by ${clockOf(wanted)}, load by `, strong(clockAndDay(latestStart)), "."];
}

/** Which of the two models answered, in words. */
export function whatIfModelSentence(answer: WhatIfEstimate): Sentence {
  return answer.model === "drying-air"
    ? ["Reckoned from the water to remove and the drying power of this air."]
    : ["Reckoned from humidity and bed depth."];
}

/** All of it but the hours themselves. */
export const whatIfInWords = (answer: WhatIfEstimate): Sentence =>
  joinSentences([whatIfSentence(answer), latestStartSentence(answer)]);

/** `14.2 h`. */
export const hoursInWords = (answer: WhatIfEstimate): string => print(answer.kilnHours.estimate, "hours", "metric");
