import type { MonthReview, OpenQuestion } from "../../report/reviewResult.ts";
import { counted } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { factWhat } from "./factWhat.ts";
import type { ReviewReader } from "./reader.ts";

const NOW: Readonly<Record<OpenQuestion["now"], string>> = {
  "still there": "Still there.",
  gone: "Gone this month.",
  "cannot be told": "Cannot be told: no batch left the kiln this month.",
};

/** What was found last month, and what became of it. */
export function openSentence({ lastMonth, now }: OpenQuestion, reader: ReviewReader): Sentence {
  const [fact] = lastMonth.facts;
  return fact === undefined ? [] : joinSentences([[strong(NOW[now])], factWhat(fact, reader)]);
}

/** Log health of the month. */
export function logHealthSentence({ logHealth }: MonthReview): Sentence {
  const { runs, runsComplete, rowsSetAside, valuesBlanked } = logHealth;
  if (runs === 0) return [];
  const complete =
    runsComplete === runs
      ? `All ${counted(runs, "batch", "batches")} have their kiln hours, moisture and yield.`
      : `${runsComplete} of ${counted(runs, "batch", "batches")} have their kiln hours, moisture and yield; the others lack one.`;
  const faults = rowsSetAside + valuesBlanked;
  return [
    complete,
    faults === 0
      ? " No row or value of theirs had to be set aside."
      : ` ${counted(faults, "row or value", "rows or values")} of theirs had to be set aside.`,
  ];
}
