import type { HoldJudgement, StretchAlarm, StretchModels, ThermostatStretch } from "../report/thermostatResult.ts";
import { printDate, printDateInFull } from "../units/instant.ts";
import { printNumber, printPValue } from "../units/print.ts";
import { counted, listed } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";
import { degrees, degreesRange, degreesSigned, type Reader, startOfStretch, twoDates, way } from "./thermostatWords.ts";

const RAISED_BY: Readonly<Record<StretchAlarm["alarms"][number]["raisedBy"][number], string>> = {
  weightedMean: "the running mean",
  cumulativeSum: "the cumulative sum",
};

const MODEL: Readonly<Record<StretchModels["winner"], string>> = {
  constant: "no change at all",
  step: "one step",
  creep: "a creep",
};

/** When the charts raised an alarm and which did; that they did not; or that they could not look. */
export function alarmSentence({ alarm }: ThermostatStretch, timeZone: string): Sentence {
  if (alarm === null) return [];
  const raised = alarm.alarms.at(-1);
  const since = `the first ${counted(alarm.baselineLoads, "load")} allow`;
  if (raised === undefined) {
    return [`Neither the running mean nor the cumulative sum has left what ${since}.`];
  }
  const by = listed(raised.raisedBy.map((chart) => RAISED_BY[chart]));
  const earlier = alarm.alarms.length - 1;
  return [
    "Alarm raised ",
    strong(printDateInFull(raised.raisedAt, timeZone)),
    ` by ${by}: ${raised.direction === "up" ? "above" : "below"} what ${since}.`,
    raised.endedAt === null
      ? ""
      : ` It ended by itself on ${printDateInFull(raised.endedAt, timeZone)}, ten loads back inside; what moved it there and back is not logged.`,
    earlier === 0
      ? ""
      : ` ${earlier === 1 ? "Another was" : `${printNumber(earlier, 0)} others were`} raised before it.`,
  ];
}

/** How large and since when, with intervals. Empty for a level that never moved. */
export function changeSentence(models: StretchModels, { units, timeZone }: Reader): Sentence {
  const { kelvinPerMonth: rate, stepKelvin: step, onset, theilSenKelvinPerMonth: sen } = models;
  const when =
    onset === null
      ? ""
      : `, begun on a day between ${twoDates(onset.low, onset.high, timeZone)} (best guess ${printDate(onset.estimate, timeZone)})`;
  if (rate !== null) {
    const check =
      sen === null ? "" : ` The middle of all slopes since then is ${degrees(sen.estimate, units, 2)} (Theil–Sen).`;
    return [
      "A creep ",
      strong(`${way(rate.estimate)} ${degrees(rate.estimate, units, 2)} a month`),
      ` (95\u00a0% interval ${spanOf(rate, units)})${when}.${check}`,
    ];
  }
  if (step === null) return [];
  return [
    "A step ",
    strong(`${way(step.estimate)} ${degrees(step.estimate, units)}`),
    ` (95\u00a0% interval ${spanOf(step, units, 1)})${when}.`,
  ];
}

/** Sizes alone where both ends lie on one side of nothing, signs where they do not. */
const spanOf = ({ low, high }: { low: number; high: number }, units: Reader["units"], decimals = 2): string =>
  low * high > 0 ? degreesRange(low, high, units, decimals) : degreesSigned(low, high, units, decimals);

/** Which of the three stories fits best and by how much, so that nobody takes a step for a drift. */
export function modelsSentence({ winner, isClear, scores }: StretchModels): Sentence {
  const [first, second] = scores;
  if (first === undefined || second === undefined) return [];
  const margin = printNumber(second.bic - first.bic, 1);
  return isClear
    ? [
        `Of three stories, no change, one step and a creep, ${MODEL[winner]} fits best and clearly: ${MODEL[second.model]} comes ${margin} behind (BIC; 6 is clear).`,
      ]
    : [
        strong(`Not settled: `),
        `${MODEL[winner]} fits best, but ${MODEL[second.model]} nearly as well (${margin} behind by BIC; 6 would be clear).`,
      ];
}

/** The tests that explain and never alarm. Empty where they could not be made. */
export function explainingTests({ mannKendallP, pettitt }: StretchModels, timeZone: string): Sentence {
  const said = [
    mannKendallP === null ? null : `Mann–Kendall p ${printPValue(mannKendallP)}`,
    pettitt === null ? null : `Pettitt p ${printPValue(pettitt.p)}, its split at ${printDate(pettitt.at, timeZone)}`,
  ].filter((one) => one !== null);
  return said.length === 0 ? [] : [`To explain only, never to alarm: ${said.join("; ")}.`];
}

/** One stretch in a line, for the list of earlier ones: `Since the first load, 41 loads: crept down 0.30 °C a month.` */
export function stretchSentence(stretch: ThermostatStretch, { units, timeZone }: Reader): Sentence {
  const { loads, alarm, models, tooLittle, from, to } = stretch;
  const span = loads === 0 ? "" : `, ${printDate(from, timeZone)} to ${printDate(to, timeZone)}`;
  const head = `Since ${startOfStretch(stretch)} (${counted(loads, "load")}${span}): `;
  if (loads === 0) return [`${head}nothing to judge.`];
  if (alarm === null) return [head, tooLittle ?? "too few loads to judge."];
  if (alarm.alarms.length === 0) return [head, strong("steady"), "."];
  if (alarm.alarms.every(({ endedAt }) => endedAt !== null)) {
    return [head, strong("steady"), ` but for ${counted(alarm.alarms.length, "alarm")} that ended by itself.`];
  }
  if (models === null || models.winner === "constant") {
    return [head, "an alarm that neither a step nor a creep explains."];
  }
  const { kelvinPerMonth: rate, stepKelvin: step } = models;
  if (rate !== null)
    return [head, strong(`crept ${way(rate.estimate)} ${degrees(rate.estimate, units, 2)} a month`), "."];
  return step === null ? [] : [head, strong(`stepped ${way(step.estimate)} ${degrees(step.estimate, units)}`), "."];
}

/** How many loads have no offset in this hold, and why. */
export function withoutSentence({ without }: HoldJudgement): Sentence {
  const count = without.reduce((sum, one) => sum + one.count, 0);
  if (count === 0) return [];
  const reasons = without
    .toSorted((a, b) => b.count - a.count)
    .map((one) => `${one.reason}${without.length === 1 ? "" : ` (${printNumber(one.count, 0)})`}`);
  return [`No offset is claimed for ${counted(count, "load")}: ${listed(reasons)}.`];
}

/** What stands under a hold's figure: whether there are loads enough, and how well the story told of them fits. */
export function stretchGrounds({ models, alarm, tooLittle }: ThermostatStretch): Sentence {
  if (alarm === null) return tooLittle === null ? [] : [tooLittle];
  return models === null || alarm.alarms.every(({ endedAt }) => endedAt !== null) ? [] : modelsSentence(models);
}
