import type { View } from "../../report/view.ts";
import type { Sentence } from "../sentence.ts";

/**
 * What a choice of dates, variety or kiln does to the scores besides leaving batches out: kiln hours to expect and the
 * other varieties' spread are then of the chosen batches too. Empty where all are chosen.
 */
export function chosenSentence({ from, to, variety, kiln }: View): Sentence {
  if (from === null && to === null && variety === null && kiln === null) return [];
  return [
    "From the chosen batches alone: the kiln hours to expect and the spread that few batches lean on are worked out from them too, so the numbers differ from those of all batches.",
  ];
}
