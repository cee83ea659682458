import type { MeasureScore, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure, printMeasure } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { aimsBeside, bareChance, chanceInHundred, inHundred, metWords, scoreRange } from "./scoreWords.ts";

/** A measure met at least so surely drags no score. */
const SURE = 0.95;
/** As many measures are named in words; the drawing has them all. */
const MOST_SAID = 3;

/** `3.6 to 5.0 %`, `at least 80.0 %`, `at most 180 mg/L`. */
export function toleranceWords({ tolerance }: Pick<MeasureScore, "tolerance">, units: UnitSystem): string {
  const measure = maltMeasure(tolerance.measure);
  const { low, high } = tolerance;
  if (low !== null && high !== null) {
    return `${printMeasure(measure, low, units, { bare: true })} to ${printMeasure(measure, high, units)}`;
  }
  if (low !== null) return `at least ${printMeasure(measure, low, units)}`;
  return high === null ? "no limit" : `at most ${printMeasure(measure, high, units)}`;
}

/** `Alva: final moisture costs most (alone met with a chance of 62 in 100), then colour (81); 5 others are surer.` */
export function dragSentence({ variety, measures }: VarietyScore): Sentence {
  if (measures.length === 0) return [];
  const said = measures.filter(({ onTarget }) => onTarget < SURE).slice(0, MOST_SAID);
  const [first, ...rest] = said;
  if (first === undefined) {
    const each = counted(measures.length, "measure");
    return [
      strong(variety),
      `: nothing drags; each of ${each} alone is met with a chance of 95\u00a0in\u00a0100 or more.`,
    ];
  }
  const name = (one: MeasureScore): string => maltMeasure(one.tolerance.measure).words;
  const others = measures.length - said.length;
  const then = rest.map((one) => `${name(one)} (${bareChance(one.onTarget)})`);
  return [
    strong(variety),
    `: ${name(first)} costs most (alone met with a chance of `,
    strong(chanceInHundred(first.onTarget)),
    `)${then.length === 0 ? "" : `, then ${listed(then)}`}`,
    others === 0 ? "." : `; ${printNumber(others, 0)} ${others === 1 ? "other costs" : "others cost"} less.`,
  ];
}

/** Measures that stand beside the score, such as laboratory results of some batches. Empty where there are none. */
export function besideSentence({ beside }: VarietyScore): Sentence {
  if (beside.length === 0) return [];
  const said = beside.map((one) => `${maltMeasure(one.tolerance.measure).words} (${bareChance(one.onTarget)})`);
  return [
    `Beside the score, since fewer than half of the batches have them, each with its own chance in 100: ${listed(said)}.`,
  ];
}

/** Measures that were not counted, one a line: `colour: 6 of 24 batches have it`. */
export const notCountedLines = ({ notCounted }: VarietyScore): readonly string[] =>
  notCounted.map(({ measure, reason }) => `${maltMeasure(measure).words}: ${reason}`);

/** Both numbers of one variety and what was seen, as one says them. Its own sentence where there is no score. */
export function scoreSentence(score: VarietyScore): Sentence {
  const { variety, onTarget, even, standing, met, batches, metShare, tooLittle, allBatches } = score;
  if (standing === "none" || onTarget === null || even === null) {
    return [
      strong(variety),
      `: no score. ${tooLittle ?? `${counted(allBatches, "batch", "batches")}; a score needs five.`}`,
    ];
  }
  const early =
    standing === "early"
      ? `Early, from ${counted(batches, "batch", "batches")}: no interval yet.`
      : (score.noInterval ?? "");
  return joinSentences([
    [
      strong(variety),
      ": on target ",
      strong(inHundred(onTarget.estimate)),
      `${scoreRange(onTarget)}, even `,
      strong(inHundred(even.estimate)),
      `${scoreRange(even)}; ${metWords(met, batches, metShare)} so far met every tolerance.`,
    ],
    early === "" ? [] : [early],
    aimsBeside(score) ? ["It repeats itself better than it hits: look at the aim before the spread."] : [],
  ]);
}
