import type { MonthlyLoss } from "../../report/fact.ts";
import type { ReviewFinding } from "../../report/reviewResult.ts";
import { print, printNumber } from "../../units/print.ts";
import { listed } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import type { ReviewReader } from "./reader.ts";

/** `€26`, `GBP 26`: a sign where there is a common one, and never cents of what is only an estimate. */
export function money(amount: number, currency: string | null): string {
  const figure = printNumber(amount, 0);
  const sign = { EUR: "€", USD: "$", GBP: "£" }[currency ?? ""];
  return sign === undefined ? `${currency ?? "in your currency"} ${figure}` : `${sign}${figure}`;
}

/** What it takes in a month, item by item; what rounds to nothing is left out. */
export function lossItems(loss: MonthlyLoss, { units }: ReviewReader): readonly string[] {
  const items = [
    { amount: loss.kilnHours, least: 0.5, text: `${printNumber(loss.kilnHours, 0)} kiln hours` },
    { amount: loss.labourHours, least: 0.5, text: `${printNumber(loss.labourHours, 0)} hours of work` },
    { amount: loss.kilowattHours, least: 1, text: print(loss.kilowattHours, "energy", units) },
    { amount: loss.kilogramsMalt, least: 1, text: `${print(loss.kilogramsMalt, "mass", units)} of malt` },
    {
      amount: loss.refusedBatches,
      least: 0.05,
      text: `${printNumber(loss.refusedBatches, loss.refusedBatches < 2 ? 1 : 0)} batches that may be refused`,
    },
  ];
  return items.filter(({ amount, least }) => amount >= least).map(({ text }) => text);
}

/** What a trouble costs a month, or what it risks where nothing is lost yet. */
export function costSentence({ loss, costAMonth, facts }: ReviewFinding, reader: ReviewReader): Sentence {
  const items = lossItems(loss, reader);
  if (items.length > 0) {
    const priced = costAMonth !== null && costAMonth >= 1;
    return [
      "Costs about ",
      ...(priced
        ? [strong(`${money(costAMonth, reader.costs.currency)} a month`), `: ${listed(items)}.`]
        : [strong(`${listed(items)} a month`), "."]),
    ];
  }
  const [first] = facts;
  return first === undefined ? [] : [RISK[first.kind]];
}

/** What each kind of trouble risks where it has cost nothing yet. */
const RISK: Readonly<Record<ReviewFinding["facts"][number]["kind"], string>> = {
  "kiln hours": "Nothing lost by it that the logs can count.",
  chart: "Nothing lost by it that the logs can count.",
  "uneven batch": "Damp corners of a bed can spoil a bag that is within spec as a whole.",
  thermostat: "Nothing lost yet; outside its tolerance malt is dried too hard, or not enough.",
  logger: "Nothing lost; but temperatures cannot be trusted until it is checked.",
  energy: "Nothing lost by it that the logs can count.",
  "power limit": "Such a bed dries by the heater’s strength, not by the thermostat, and takes longer in cold weather.",
  heater: "Nothing lost while the weather is mild; in the cold the kiln will be slow.",
  variety: "A brewer who gets one batch unlike the next asks somebody else.",
  lot: "A brewer who gets one batch unlike the next asks somebody else.",
  steep: "What is short in the steep cannot be made good on the floor.",
  bed: "A bag from that bed differs from its neighbours, and an average hides it.",
  timetable: "Malt that is short of growth lacks extract and lauters slowly; malt that is long of it has lost mass.",
  laboratory: "The house’s meter decides when to stop; brewers read the laboratory’s figure.",
  logs: "What is not logged cannot be looked at.",
  orders: "A brewer who waits plans a brew without you.",
};
