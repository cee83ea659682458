import type { PromisedAgainstMade } from "../../report/reviewResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printNumber, printRange } from "../../units/print.ts";
import { counted, listed } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import type { ReviewReader } from "./reader.ts";

/** Is what was promised made, in store or coming; and if not, what to start first. Dates of orders are the log's own. */
export function promisedAnswer(promised: PromisedAgainstMade, { units, timeZone }: ReviewReader): Sentence {
  const { varieties, startFirst, orders, asOf } = promised;
  const owed = varieties.reduce((sum, { owedKilograms }) => sum + owedKilograms, 0);
  const short = varieties.filter(({ shortKilograms }) => shortKilograms > 0);
  if (orders.length === 0) return ["No order is open."];
  const open = `${print(owed, "mass", units)} in ${counted(orders.length, "open order")}`;
  if (short.length === 0) return [`${open}: `, strong("all of it is in store or on its way"), "."];
  const lacks = listed(
    short.map(({ variety, shortKilograms }) => `${print(shortKilograms, "mass", units)} of ${variety}`),
  );
  const [first] = startFirst;
  const start = first === undefined ? "" : ` Start ${first.variety} first${startBy(first, asOf, timeZone)}.`;
  return [`${open}; `, strong(`${lacks} is neither in store nor on its way`), `.${start}`];
}

type Start = PromisedAgainstMade["startFirst"][number];

/** `, in steep by 12 Nov 2026 for order O0144`, or that it is too late for that. */
function startBy({ latestSteepAt, forOrder }: Start, asOf: number, timeZone: string): string {
  return latestSteepAt < asOf
    ? `, at once: order ${forOrder} will be late all the same`
    : `, in steep by ${printDate(latestSteepAt, timeZone)} for order ${forOrder}`;
}

/** What comes after the first, in the order in which it must be steeped. Empty where there is no more. */
export function startNextSentence({ startFirst, asOf }: PromisedAgainstMade, { timeZone }: ReviewReader): Sentence {
  const next = startFirst.slice(1, 4).map((start) => `${start.variety}${startBy(start, asOf, timeZone)}`);
  return next.length === 0 ? [] : [`Then ${next.join("; ")}.`];
}

/** Loads that it takes against the loads that the house fires, and how often its pace would not have done. */
export function paceSentence(promised: PromisedAgainstMade, { units }: ReviewReader): Sentence {
  const { loadsNeeded, loadsThereAre, weeks, spells, chanceLate, hoursALoad } = promised;
  if (promised.tooLittle !== null) return [promised.tooLittle];
  const hours =
    hoursALoad === null
      ? ""
      : ` In the air of this season a load takes about ${print(hoursALoad.estimate, "hours", units)} (${printRange(hoursALoad.low, hoursALoad.high, "hours", units)}).`;
  const usual = `The house fires ${counted(loadsThereAre, "load")} in a middling spell of ${weeks} weeks`;
  if (loadsNeeded === 0) return [`${usual}; none is needed for what is promised.${hours}`];
  const late =
    chanceLate === null
      ? ""
      : chanceLate === 0
        ? ` In none of its past ${printNumber(spells, 0)} spells would that have been too few.`
        : ` In ${printNumber(100 * chanceLate, 0)} of 100 past spells that would have been too few: take it as the chance of running late.`;
  return [`${usual}; what is promised needs `, strong(counted(loadsNeeded, "load")), `.${late}${hours}`];
}

/** So many orders are named in a sentence; the table has all. */
const MOST_NAMED = 6;

/** Overdue orders, by name. Empty where there are none. */
export function overdueSentence({ orders }: PromisedAgainstMade, { units }: ReviewReader): Sentence {
  const overdue = orders.filter((order) => order.overdue);
  if (overdue.length === 0) return [];
  const mass = overdue.reduce((sum, { stillOwedKilograms }) => sum + stillOwedKilograms, 0);
  const named = overdue.slice(0, MOST_NAMED).map(({ order }) => order);
  const more = overdue.length - named.length;
  return [
    `Past their day: ${counted(overdue.length, "order")} with ${print(mass, "mass", units)}, ${listed([...named, ...(more > 0 ? [`${counted(more, "more", "more")}`] : [])])}.`,
  ];
}
