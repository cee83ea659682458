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
    return [
      `${countedInWords(loadsWithHours, "kiln load")} so far took `,
      strong(hours(medianHours)),
      " in the middle.",
    ];
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

/** Where the answer comes from and what it leaves open: intervals, share explained, loads and air they rest on. */
export function kilnHoursGrounds(result: KilnHoursResult, units: UnitSystem): Sentence {
  const { humidityDepth, tooLittle, usualRange } = result.kilnHours;
  if (humidityDepth === null) return tooLittle === null ? [] : [tooLittle];
  const { rSquared, observations, residualStandardDeviation } = humidityDepth.fit;
  const air = result.airBasis === "at_loading" ? "the air at loading" : "the air averaged over each load";
  return joinSentences([
    usualRange === null ? [] : [`Eight loads in ten take ${hours(usualRange[0])} to ${hours(usualRange[1])}.`],
    effectIntervalsSentence(humidityDepth, units),
    [
      `Together they account for ${print(rSquared * 100, "percent", units, { decimals: 0 })} of the spread over `,
      `${counted(observations, "load")}, by ${air}; a load is still off by ${hours(residualStandardDeviation, 2)} `,
      "(standard deviation).",
    ],
  ]);
}

/** `Seven loads from 3 Apr 2026 to 20 May 2026 together took 1.5 h longer each than air and bed account for.` */
export function stretchSentence(stretch: Stretch, timeZone: string): Sentence {
  const count = stretch.loads.length;
  return [
    `${countedInWords(count, "load")} from ${printDate(stretch.from, timeZone)} to ${printDate(stretch.to, timeZone)} took `,
    strong(hours(Math.abs(stretch.meanResidualHours))),
    ` ${stretch.meanResidualHours > 0 ? "longer" : "less"}${count > 1 ? " each" : ""} than air and bed account for.`,
  ];
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
