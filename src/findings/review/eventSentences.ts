import type { MonthEvent, MonthReview } from "../../report/reviewResult.ts";
import { printDate, printMonth } from "../../units/instant.ts";
import { effectStatement } from "../changes/changeSentences.ts";
import { joinSentences, type Sentence } from "../sentence.ts";
import type { ReviewReader } from "./reader.ts";

/** `14 May 2026, kiln: belt replaced.` An event's date is the log's own, kept as UTC midnight. */
export const eventSentence = ({ event: { on, scope, what } }: MonthEvent): Sentence => [
  `${printDate(on, "UTC")}, ${scope}: ${what}.`,
];

/** What a change came to by the end of the logs; empty for what is no change. */
export function eventEffect({ changeId, effect }: MonthEvent, { units }: ReviewReader): Sentence {
  if (changeId === null) return [];
  if (effect === null) return ["What it came to could not be compared."];
  return effectStatement(effect, units);
}

/** Where nothing was logged about the house in a month. */
export const noEventsSentence = ({ totals }: MonthReview): Sentence => [
  `No change, repair, calibration or incident is logged for ${printMonth(totals.month)}.`,
];

/** Event and effect as one sentence, for the terminal. */
export const eventInFull = (event: MonthEvent, reader: ReviewReader): Sentence =>
  joinSentences([eventSentence(event), eventEffect(event, reader)]);
