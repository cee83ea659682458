import type { PromisedAgainstMade } from "../../report/reviewResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printNumber, printRange } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
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

/** Loads and kiln nights that it takes, the house’s pace, and how often that pace would have brought one too late. */
export function paceSentence(promised: PromisedAgainstMade, { units }: ReviewReader): Sentence {
  const { loadsNeeded, loadsThereAre, weeks } = promised;
  if (promised.tooLittle !== null) return [promised.tooLittle];
  const usual = `The house fires ${counted(loadsThereAre, "load")} in a middling spell of ${weeks} weeks`;
  const hours = hoursWords(promised, units);
  if (loadsNeeded === 0) return [`${usual}; none is needed for what is promised.${hours === "" ? "" : ` I${hours}.`}`];
  const nights = nightsWords(promised);
  return [
    `${usual}; what is promised needs `,
    strong(counted(loadsNeeded, "load")),
    `${nights}${hours === "" ? "" : `: i${hours}`}.`,
    late(promised),
  ];
}

/** `In this season’s air a load takes about 13.2 h (11.9 to 14.6 h)`: what the nights are counted with. */
function hoursWords({ hoursALoad }: PromisedAgainstMade, units: UnitSystem): string {
  if (hoursALoad === null) return "";
  const { estimate, low, high } = hoursALoad;
  return `n this season’s air a load takes about ${print(estimate, "hours", units)} (${printRange(low, high, "hours", units)})`;
}

const nightsWords = ({ nightsNeeded, nightsThereAre, weeks }: PromisedAgainstMade): string =>
  nightsNeeded === null || nightsThereAre === null
    ? ""
    : `, ${printNumber(nightsNeeded, 0)} of the ${printNumber(nightsThereAre, 0)} kiln nights in the coming ${weeks} weeks`;

/**
 * How often the house’s own pace would have been too slow, behind what is under way, which has the kiln first. The pace carries
 * the weather of its day: this season’s air is in the hours and nights, and not in this.
 */
function late({ chanceLate, spells, loadsNeeded, loadsUnderWay }: PromisedAgainstMade): string {
  if (chanceLate === null) return "";
  const first = loadsUnderWay === 0 ? "" : `, behind the ${counted(loadsUnderWay, "load")} under way`;
  const which = loadsNeeded === 1 ? "it" : "one of them";
  if (spells === 0) return ` Even started now${first}, ${which} will come too late.`;
  const times = chanceLate === 0 ? "none" : chanceLate === 1 ? "every one" : printNumber(chanceLate * spells, 0);
  const chance =
    chanceLate > 0 && chanceLate < 1 ? `: a chance of running late of ${printNumber(100 * chanceLate, 0)} in 100` : "";
  return ` Started now${first}, ${which} would have come too late in ${times} of ${counted(spells, "past spell")} of the house’s own pace, whatever their weather${chance}.`;
}

/** So many orders are named in a sentence; the table has all. */
const MOST_NAMED = 6;

/** Overdue orders, by name, and what of them could leave today. Empty where there are none. */
export function overdueSentence({ orders, varieties }: PromisedAgainstMade, { units }: ReviewReader): Sentence {
  const overdue = orders.filter((order) => order.overdue);
  if (overdue.length === 0) return [];
  const massOf = (of: typeof orders): number => of.reduce((sum, { stillOwedKilograms }) => sum + stillOwedKilograms, 0);
  const mass = massOf(overdue);
  const inStore = varieties.reduce((sum, { variety, storeKilograms }) => {
    return sum + Math.min(storeKilograms, massOf(overdue.filter((order) => order.variety === variety)));
  }, 0);
  const named = overdue.slice(0, MOST_NAMED).map(({ order }) => order);
  const more = overdue.length - named.length;
  const names = listed([...named, ...(more > 0 ? [counted(more, "more", "more")] : [])]);
  const store =
    inStore < 1
      ? ""
      : ` ${mass - inStore < 1 ? "All of it" : `${print(inStore, "mass", units)} of it`} lies in store: ship it, or write down that it was shipped.`;
  return [`Past their day: ${counted(overdue.length, "order")} with ${print(mass, "mass", units)} (${names}).${store}`];
}
