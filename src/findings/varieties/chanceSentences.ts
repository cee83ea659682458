import type { MeasureScore, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure, measureUnit, printMeasure } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { aimsBeside, chanceInHundred, inHundred, metWords, scoreRange } from "./scoreWords.ts";

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

/** `Alva: final moisture costs most (62 in 100 alone), then colour (81 in 100); the other five are each met by 95 in 100 or more.` */
export function dragSentence({ variety, measures }: VarietyScore): Sentence {
  if (measures.length === 0) return [];
  const dragging = measures.filter(({ onTarget }) => onTarget < SURE);
  const said = dragging.slice(0, MOST_SAID);
  const [first, ...rest] = said;
  if (first === undefined) {
    return [
      strong(variety),
      `: no measure drags; each of ${printNumber(measures.length, 0)} is met by ${printNumber(SURE * 100, 0)}\u00a0in\u00a0100 or more.`,
    ];
  }
  const words = (one: MeasureScore): string =>
    `${maltMeasure(one.tolerance.measure).words} (${chanceInHundred(one.onTarget)})`;
  const others = measures.length - said.length;
  const tail = others === 0 ? "." : `; ${printNumber(others, 0)} ${others === 1 ? "other is" : "others are"} surer.`;
  return [
    strong(variety),
    `: ${maltMeasure(first.tolerance.measure).words} costs most, met alone by `,
    strong(chanceInHundred(first.onTarget)),
    rest.length === 0 ? "" : `, then ${listed(rest.map(words))}`,
    tail,
  ];
}

/** What was not counted and why: `Not counted: colour (4 values; 5 are needed).` */
export function notCountedSentence({ notCounted }: VarietyScore): Sentence {
  if (notCounted.length === 0) return [];
  return [
    `Not counted: ${listed(notCounted.map(({ measure, reason }) => `${maltMeasure(measure).words} (${reason})`))}.`,
  ];
}

/** Both numbers of one variety and what was seen, as one says them. Its own sentence where there is no score. */
export function scoreSentence(score: VarietyScore): Sentence {
  const { variety, onTarget, even, standing, met, batches, metShare, tooLittle, allBatches } = score;
  if (standing === "none" || onTarget === null || even === null) {
    return [
      strong(variety),
      `: no score. ${tooLittle ?? `${counted(allBatches, "batch", "batches")}; a score needs five.`}`,
    ];
  }
  const early = standing === "early" ? `Early, from ${counted(batches, "batch", "batches")}: no interval yet.` : "";
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

/** `%`, for a column's head; nothing for what has no unit. */
export const unitOf = (name: string, units: UnitSystem): string => measureUnit(maltMeasure(name), units);
