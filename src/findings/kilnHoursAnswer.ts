import type { HoursAnalysis, KilnHoursResult, Stretch } from "../report/kilnHoursResult.ts";
import { printDate } from "../units/instant.ts";
import { print } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { counted, countedInWords } from "./counted.ts";
import { effectIntervalsSentence, effectSentence } from "./kilnEffects.ts";
import { joinSentences, type Sentence, strong } from "./sentence.ts";

const hours = (value: number, decimals = 1): string => print(value, "hours", "metric", { decimals });

/** How long a kiln takes here, with no more weight than the number of loads carries. */
function usualHours(analysis: HoursAnalysis): Sentence {
  const { loadsWithHours, medianHours } = analysis;
  if (loadsWithHours === 0 || medianHours === null) return ["No kiln load in these logs has been timed yet."];
  if (loadsWithHours === 1) return ["One kiln load has been timed: it took ", strong(hours(medianHours)), "."];
  if (loadsWithHours < 10) {
    return [`${countedInWords(loadsWithHours, "kiln load")} so far took about `, strong(hours(medianHours)), "."];
  }
  return ["A kiln takes ", strong(hours(medianHours)), " here."];
}

/** The page's first sentence: the usual hours, and what air and bed do to them where the logs show it. */
export function kilnHoursAnswer(result: KilnHoursResult, units: UnitSystem): Sentence {
  const { humidityDepth } = result.kilnHours;
  return joinSentences([
    usualHours(result.kilnHours),
    humidityDepth === null ? [] : effectSentence(humidityDepth, units),
  ]);
}

/** How far loads differ, and the intervals of the answer; or what is lacking for an estimate. */
export function kilnHoursGrounds({ kilnHours }: KilnHoursResult, units: UnitSystem): Sentence {
  const { humidityDepth, tooLittle, usualRange } = kilnHours;
  if (humidityDepth === null) return tooLittle === null ? [] : [tooLittle];
  return joinSentences([
    usualRange === null ? [] : [`Eight loads in ten take ${hours(usualRange[0])} to ${hours(usualRange[1])}.`],
    effectIntervalsSentence(humidityDepth, units),
  ]);
}

/** How well the answer is known: share explained, loads and air it rests on. Empty without a model. */
export function kilnHoursKnown(result: KilnHoursResult, units: UnitSystem): Sentence {
  const { humidityDepth } = result.kilnHours;
  if (humidityDepth === null) return [];
  const { rSquared, observations, residualStandardDeviation } = humidityDepth.fit;
  const air = result.airBasis === "at_loading" ? "the air at loading" : "the air averaged over each load";
  return [
    `Humidity and bed depth together account for ${print(rSquared * 100, "percent", units, { decimals: 0 })} of the spread over `,
    `${counted(observations, "load")}, by ${air}; a load is still off by ${hours(residualStandardDeviation, 2)} `,
    "(standard deviation).",
  ];
}

/** Stretches are named up to here, the latest; the figure rings them all. */
const MOST_STRETCHES = 3;

/** `Loads that went together otherwise than air and bed account for: seven from 3 Apr 2026 to 20 May 2026, 1.5 h longer each.` */
export function stretchesSentence(stretches: readonly Stretch[], timeZone: string): Sentence {
  const named = stretches.slice(-MOST_STRETCHES);
  if (named.length === 0) return [];
  const parts = named.map(({ loads, from, to, meanResidualHours }): Sentence => {
    const way = meanResidualHours > 0 ? "longer" : "less";
    return [
      `${countedInWords(loads.length, "load").toLowerCase()} from ${printDate(from, timeZone)} to ${printDate(to, timeZone)} took `,
      strong(`${hours(Math.abs(meanResidualHours))} ${way}`),
      loads.length > 1 ? " each" : "",
    ];
  });
  const joined = parts.flatMap((part, i) => (i === 0 ? part : [i === parts.length - 1 ? " and " : ", ", ...part]));
  return ["Beyond what air and bed account for, ", ...joined, "."];
}

/** What the page says of drying hours: loading to the start of the cure. */
export function dryingHoursAnswer(result: KilnHoursResult, units: UnitSystem): Sentence {
  const analysis = result.dryingHours;
  if (analysis.loadsWithHours === 0 || analysis.medianHours === null) {
    return ["The start of the cure is not logged, so nothing is said of when to turn the heat up."];
  }
  const usual: Sentence = [
    "The heat goes up for the cure after ",
    strong(hours(analysis.medianHours)),
    ` (${analysis.loadsWithHours === 1 ? "one load" : `middle of ${counted(analysis.loadsWithHours, "load")}`}).`,
  ];
  if (analysis.humidityDepth === null) {
    return joinSentences([usual, analysis.tooLittle === null ? [] : [analysis.tooLittle]]);
  }
  return joinSentences([usual, effectSentence(analysis.humidityDepth, units)]);
}
