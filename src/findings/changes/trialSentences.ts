import type { TrialAnswer } from "../../report/trialAnswer.ts";
import { printSize } from "../../units/measureChange.ts";
import { printNumber } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import { countedAs, measureWords } from "./changeWords.ts";

/** `16`, or a dash where no number of runs would do. */
export const runsWanted = (runs: number | null): string => (runs === null ? "too many" : printNumber(runs, 0));

/** Runs needed for the difference that the reader asks for. */
export function trialSentence(answer: TrialAnswer, units: UnitSystem): Sentence {
  if (answer.kind === "refusal") return [answer.sentence];
  const { measure, row } = answer;
  const [one, many] = countedAs(measure);
  const asked = `To tell a difference of ${printSize(measure, row.difference, units)} in ${measureWords(measure)}`;
  const { runsEachSide80: usual, runsEachSide90: sure } = row;
  if (usual === null) return [`${asked}, no number of ${many} that a house makes would do.`];
  return [
    `${asked}, plan `,
    strong(`${counted(usual, one, many)} before and as many after`),
    sure === null ? "." : `; to be surer of it, ${printNumber(sure, 0)} and ${printNumber(sure, 0)}.`,
  ];
}
