import type { ChangeEffect, ChangeResult } from "../../report/changesResult.ts";
import { printSize, printSpan } from "../../units/measureChange.ts";
import { printNumber } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted, listed } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import { countedAs, measureWords } from "./changeWords.ts";

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** `fell by 1.4 h (95 % interval 0.4 to 2.3 h)`. */
function moved({ measure, total }: ChangeEffect, units: UnitSystem): Sentence {
  const way = total.estimate < 0 ? "fell by" : "rose by";
  return [
    `${measureWords(measure)} ${way} `,
    strong(printSize(measure, total.estimate, units)),
    ` (95\u00a0% interval ${printSpan(measure, total, units)})`,
  ];
}

/** What more runs would do for a comparison that cannot tell yet. */
function waiting(
  { measure, moreRuns, moreRunsAtLeast, whyNoMore, tellable, doubtedByPlacebo, placebo, total }: ChangeEffect,
  units: UnitSystem,
): string {
  const [one, many] = countedAs(measure);
  const worth = printSize(measure, tellable, units);
  if (doubtedByPlacebo && placebo !== null && placebo.own * total.estimate < 0) {
    return `the first ${printNumber(placebo.runsEachSide, 0)} ${many} after it differ the other way`;
  }
  if (doubtedByPlacebo && placebo !== null) {
    return `${printNumber(placebo.asLarge, 0)} of ${counted(placebo.dates, "date")} without a change show as much`;
  }
  if (moreRuns !== null) {
    return moreRuns === 0
      ? `these ${many} would have told ${worth} four times in five, but did not`
      : `${counted(moreRuns, `more ${one}`, `more ${many}`)} would tell a difference of ${worth} four times in five`;
  }
  if (moreRunsAtLeast !== null) {
    return `it takes at least ${counted(Math.max(1, moreRunsAtLeast), `more ${one}`, `more ${many}`)}, in weather and of varieties like those before, to tell a difference of ${worth}`;
  }
  return whyNoMore === "comparison is closed"
    ? "what came next has closed the comparison, so that only another trial would tell"
    : `there were too few ${many} before it, so that only another trial would tell`;
}

/** What a change came to in one measure, without who did what when: `kiln hours fell by 1.4 h (…)`. */
export function effectSentence(effect: ChangeEffect, units: UnitSystem): Sentence {
  const { measure, verdict, noBiggerThan } = effect;
  const words = measureWords(measure);
  switch (verdict) {
    case "helped":
    case "hurt":
      return moved(effect, units);
    case "moved":
      return [...moved(effect, units), ", for neither better nor worse"];
    case "no difference":
      return [`no difference to ${words} `, strong(`bigger than ${printSize(measure, noBiggerThan, units)}`)];
    case "cannot be told":
      return effect.doubtedByPlacebo
        ? [...moved(effect, units), `, but ${waiting(effect, units)}`]
        : [
            `a difference in ${words} of `,
            strong(`up to ${printSize(measure, noBiggerThan, units)}`),
            ` either way remains open, and ${waiting(effect, units)}`,
          ];
  }
}

/** As a sentence of its own. */
export function effectStatement(effect: ChangeEffect, units: UnitSystem): Sentence {
  const [first = "", ...rest] = effectSentence(effect, units);
  return [typeof first === "string" ? capital(first) : first, ...rest, "."];
}

/** What is left once the altered column stands beside the change. Empty where it could not be parted, or no effect is told to be parted. */
export function beyondSentence(effect: ChangeEffect, altered: string, units: UnitSystem): Sentence {
  const { measure, beyond, verdict } = effect;
  if (beyond === null || verdict === "no difference" || verdict === "cannot be told") return [];
  const span = `(95\u00a0% interval ${printSpan(measure, beyond, units)})`;
  const words = measureWords(measure);
  if (beyond.low <= 0 && beyond.high >= 0) {
    return [
      strong(`Nothing is seen to be left beyond ${altered}`),
      `: ${printSize(measure, beyond.estimate, units)} ${beyond.estimate < 0 ? "less" : "more"} ${span}.`,
    ];
  }
  const way = beyond.estimate < 0 ? "less" : "more";
  return [
    `Beyond what ${altered} accounts for, `,
    strong(`${printSize(measure, beyond.estimate, units)} ${way}`),
    ` of ${words} ${measure === "kiln_hours" ? "are" : "is"} left ${span}.`,
  ];
}

/** How often a date without a change shows as much. */
export function placeboSentence({ measure, placebo }: ChangeEffect, units: UnitSystem): Sentence {
  const words = measureWords(measure);
  if (placebo === null) return [`No stretch without an event is long enough to try other dates for ${words}.`];
  const { dates, asLarge, runsEachSide, own } = placebo;
  const [, many] = countedAs(measure);
  const size = printSize(measure, own, units);
  return [
    `Between the last ${printNumber(runsEachSide, 0)} ${many} before it and the first ${printNumber(runsEachSide, 0)} after ${words} differ by ${size}; of ${counted(dates, "date")} without a change `,
    strong(asLarge === 0 ? "none" : printNumber(asLarge, 0)),
    ` ${asLarge < 2 ? "shows" : "show"} as much.`,
  ];
}

/** What the comparison is made of, for whoever checks it. */
export function basisSentence(effect: ChangeEffect, units: UnitSystem): Sentence {
  const { measure, runsBefore, runsAfter, adjustedFor, plain, spread, isSerial } = effect;
  const [one, many] = countedAs(measure);
  const adjusted = adjustedFor.length === 0 ? "Nothing is adjusted for" : `Adjusted for ${listed(adjustedFor)}`;
  const errors = isSerial ? "neighbours are alike, so errors are Newey and West’s" : "errors are HC3";
  return [
    `${capital(measureWords(measure))}: ${counted(runsBefore, one, many)} before and ${counted(runsAfter, one, many)} after. ${adjusted}; left between ${many} ${printSize(measure, spread, units)}; ${errors}. With nothing adjusted the difference is ${printSpan(measure, plain, units)} (Welch).`,
  ];
}

/** One word for a table. */
export const verdictWord = ({ verdict, measure, noBiggerThan }: ChangeEffect, units: UnitSystem): string =>
  verdict === "no difference" ? `none bigger than ${printSize(measure, noBiggerThan, units)}` : verdict;

/** Why some measures are not there. */
export function lackingSentences({ lacking }: ChangeResult): readonly Sentence[] {
  return lacking.map(({ measure, reason }) => [`${capital(measureWords(measure))}: ${reason}`]);
}
