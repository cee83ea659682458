import type { MonthReview, ReviewFinding } from "../../report/reviewResult.ts";
import { printMonth } from "../../units/instant.ts";
import { counted, countedInWords, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { factShort } from "./factShort.ts";
import { unreadFilesSentence } from "./openSentences.ts";
import { ordersEyeSentence } from "./ordersEye.ts";
import type { ReviewReader } from "./reader.ts";

/** A page shows so many findings; the rest is folded. */
export const FINDINGS_SHOWN = 7;

const KIND_WORDS: Readonly<Record<MonthReview["lookedAt"][number]["kind"], string>> = {
  "kiln hours": "kiln hours",
  chart: "yield and moisture",
  "uneven batch": "the spread within batches",
  thermostat: "the thermostats",
  logger: "the logger’s checks",
  energy: "energy",
  "power limit": "the heater’s strength",
  heater: "how long the heater is on",
  variety: "the varieties",
  lot: "the grain lots",
  steep: "the steep",
  bed: "the beds",
  timetable: "the timetable",
  laboratory: "the laboratory’s results",
  logs: "the logs",
  orders: "the orders",
};

/** The cause that several facts speak of, behind the first of them. */
const WHERE: ReadonlyMap<ReviewFinding["cause"], string> = new Map([
  ["kiln air", ", as with too little air or heat"],
  ["scale", ", as with a scale that has moved"],
]);

/** The page's first sentence: the month was quiet, or what to look at first. */
export function monthAnswer(review: MonthReview, reader: ReviewReader): Sentence {
  const { findings, totals } = review;
  const month = printMonth(totals.month);
  const [first] = findings;
  const [fact] = first?.facts ?? [];
  const none = `No batch left the kiln in ${month}.`;
  if (first === undefined || fact === undefined) {
    const unread = unreadFilesSentence(review);
    if (totals.batches === 0) return joinSentences([[none], unread]);
    return joinSentences([
      [`${month} was `, strong("quiet"), `: nothing stands out in its ${counted(totals.batches, "batch", "batches")}.`],
      unread,
    ]);
  }
  if (totals.batches === 0 && fact.kind === "logs") {
    const lost = counted(fact.batchesLost, "batch", "batches");
    return [
      "Of no batch that left the kiln in ",
      `${month} could the kiln’s row be read: `,
      strong(`${lost} lost`),
      ".",
    ];
  }
  const more = findings.length - 1;
  // Orders that want an eye are told of behind this sentence, which must not deny them.
  const nothing = ordersEyeSentence(review).length > 0 ? "In the batches nothing else" : "Nothing else";
  const rest = more === 0 ? `${nothing} stands out.` : `${countedInWords(more, "more thing")} to look at.`;
  const where = WHERE.get(first.cause) ?? "";
  return [strong(factShort(fact, reader)), `${where}. ${rest}`];
}

/** What was looked at, and what could not be looked at, so that a quiet month is known to have been looked at. */
export function lookedAtSentence({ lookedAt }: MonthReview): Sentence {
  const words = (tooLittle: boolean): readonly string[] => [
    ...new Set(lookedAt.filter((look) => look.tooLittle === tooLittle).map(({ kind }) => KIND_WORDS[kind])),
  ];
  const [seen, unseen] = [words(false), words(true)];
  return [
    seen.length === 0 ? "" : `Looked at: ${listed(seen)}.`,
    unseen.length === 0 ? "" : `${seen.length === 0 ? "" : " "}Too little is logged to look at ${listed(unseen)}.`,
  ].filter((part) => part !== "");
}

/** One kind that was looked at, with the count it stands on: `kiln hours: 6`. For the terminal and for tables. */
export const lookedAtLine = ({ kind, count, tooLittle }: MonthReview["lookedAt"][number]): string =>
  tooLittle ? `${KIND_WORDS[kind]} (too little)` : `${KIND_WORDS[kind]} (${count})`;
