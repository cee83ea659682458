import type { MonthReview, OpenQuestion } from "../../report/reviewResult.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import { factShort } from "./factShort.ts";
import type { ReviewReader } from "./reader.ts";

const NOW: Readonly<Record<OpenQuestion["now"], string>> = {
  "still there": "Still there: ",
  gone: "Gone: ",
  "cannot be told": "Cannot be told, since no batch left the kiln: ",
};

/** What was found last month, and what became of it. */
export function openSentence({ lastMonth, now }: OpenQuestion, reader: ReviewReader): Sentence {
  const [fact] = lastMonth.facts;
  return fact === undefined ? [] : [strong(NOW[now]), lowerFirst(factShort(fact, reader)), "."];
}

/** Inside a sentence; a name that begins with a capital of its own keeps it. */
const lowerFirst = (text: string): string =>
  /^(The|In|Batch(es)?|Bed|Lot|Moisture|Yield|Orders|Measured|[A-Z][a-z]+ batch(es)?)\b/.test(text)
    ? `${text.charAt(0).toLowerCase()}${text.slice(1)}`
    : text;

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
