import type { HeaterFact, PowerFact } from "../../report/fact.ts";
import { printNumber } from "../../units/print.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";

const percent = (share: number): string => `${printNumber(100 * share, 0)} %`;

/** Loads in which the heater gave all it has. */
export const powerWhat = ({ loads, ofLoads }: PowerFact): Sentence => [
  `In `,
  strong(`${printNumber(loads, 0)} of ${counted(ofLoads, "load")}`),
  " the heater could not hold the drying temperature.",
];

/** A heater that is on for longer than it was. */
export const heaterWhat = ({ kiln, longerOn: { estimate, low, high }, runCount }: HeaterFact): Sentence => [
  `In the latest ${counted(runCount, "batch", "batches")} the heater of kiln ${kiln} was on `,
  strong(`${percent(estimate)} longer`),
  ` than it used to be to warm the air as far (${printNumber(100 * low, 0)} to ${percent(high)}).`,
];

/** As a clause, for a headline. */
export const heaterShort = ({ kiln, longerOn }: HeaterFact): string =>
  `The heater of kiln ${kiln} is on ${percent(longerOn.estimate)} longer to warm the air as far`;
