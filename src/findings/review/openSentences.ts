import type { MonthReview, OpenQuestion } from "../../report/reviewResult.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, lowerFirst, type Sentence, strong } from "../sentence.ts";
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
  return fact === undefined ? [] : [strong(NOW[now]), carriedOn(factShort(fact, reader)), "."];
}

/** Inside a sentence; a name that begins with a capital of its own keeps it. */
const carriedOn = (text: string): string =>
  /^(The|In|Batch(es)?|Bed|Lot|Moisture|Yield|Orders|Measured|[A-Z][a-z]+ batch(es)?)\b/.test(text)
    ? lowerFirst(text)
    : text;

/** Files that could not be read at all: what they hold is in no part of the review. Empty where all could. */
export function unreadFilesSentence({ logHealth: { filesSetAside } }: MonthReview): Sentence {
  if (filesSetAside.length === 0) return [];
  const are = filesSetAside.length === 1 ? "is" : "are";
  return [
    strong(`${listed(filesSetAside)} could not be read`),
    ` and ${are} left out of all this: the Logs page says why.`,
  ];
}

/** Log health of the month. */
export function logHealthSentence(review: MonthReview): Sentence {
  const { runs, runsComplete, rowsSetAside, valuesBlanked, runsLost } = review.logHealth;
  const unread = unreadFilesSentence(review);
  const lost: Sentence =
    runsLost.length === 0
      ? []
      : [
          `${runsLost.length === 1 ? "Batch" : "Batches"} ${listed(runsLost)} left the floor, but no row of the kiln could be read: not counted here.`,
        ];
  if (runs === 0) return joinSentences([unread, lost]);
  const complete =
    runsComplete === runs
      ? `All ${counted(runs, "batch", "batches")} have their kiln hours, moisture and yield.`
      : `${runsComplete} of ${counted(runs, "batch", "batches")} have their kiln hours, moisture and yield; the others lack one.`;
  const faults = rowsSetAside + valuesBlanked;
  return joinSentences([
    unread,
    lost,
    [
      complete,
      faults === 0
        ? " No row or value of theirs had to be set aside."
        : ` ${counted(faults, "row or value", "rows or values")} had to be set aside.`,
    ],
  ]);
}
