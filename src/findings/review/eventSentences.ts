import type { MonthEvent, MonthReview } from "../../report/reviewResult.ts";
import { printDate, printMonth } from "../../units/instant.ts";
import { effectStatement } from "../changes/changeSentences.ts";
import { joinSentences, type Sentence } from "../sentence.ts";
import type { ReviewReader } from "./reader.ts";

/** `14 May 2026, kiln: belt replaced.` An event's date is the log's own, kept as UTC midnight. */
export const eventSentence = ({ event: { on, scope, what } }: MonthEvent): Sentence => [
  `${printDate(on, "UTC")}, ${scope}: ${what}.`,
];

/** What it came to by the month’s end, or why that cannot be said yet; empty for what could not show. */
export function eventEffect({ effect, tooLittle }: MonthEvent, { units }: ReviewReader): Sentence {
  if (effect === null) return tooLittle === null ? [] : [tooLittle];
  return effectStatement(effect, units);
}

/** What stands over changes and repairs of the months before. */
export const earlierEventsWords = "Of the two months before, as it now stands";

/** Where nothing was logged about the house in a month. */
export const noEventsSentence = ({ totals }: MonthReview): Sentence => [
  `No change, repair, calibration or incident is logged for ${printMonth(totals.month)}.`,
];

/** Event and effect as one sentence, for the terminal. */
export const eventInFull = (event: MonthEvent, reader: ReviewReader): Sentence =>
  joinSentences([eventSentence(event), eventEffect(event, reader)]);
