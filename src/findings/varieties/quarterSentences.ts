import type { QuarterDifference, VarietyDetail } from "../../report/varietiesResult.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { columnWords } from "./columnWords.ts";

/** A difference counts where fewer than one in twenty of those found would be chance (Benjamini and Hochberg). */
export const holdsUp = ({ correctedP }: QuarterDifference): boolean => correctedP < 0.05;

/** What goes with the best and the worst quarter of a variety's batches, and how many columns were looked at for it. */
export function quartersSentence({ quarters }: VarietyDetail): Sentence {
  if (quarters === null) return [];
  const { each, lookedAt, differences } = quarters;
  const sure = differences.filter(holdsUp).map(({ column }) => columnWords(column).words);
  const looked: Sentence = [
    `The ${counted(each, "best batch", "best batches")} against the ${counted(each, "worst", "worst")}; ${counted(lookedAt, "column was", "columns were")} looked at, and p is corrected for that.`,
  ];
  if (sure.length === 0)
    return joinSentences([["Nothing that was logged differs between them by more than chance."], looked]);
  return joinSentences([
    ["They differ in ", strong(listed(sure)), ". That is what goes with it, not yet what causes it."],
    looked,
  ]);
}
