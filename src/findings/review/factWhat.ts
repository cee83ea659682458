import type { Fact, ThermostatFact } from "../../report/fact.ts";
import { printDateInFull } from "../../units/instant.ts";
import { print, printNumber, printRange } from "../../units/print.ts";
import { measureName, points, pointsRange } from "../chartWords.ts";
import { counted, countedInWords, listed } from "../counted.ts";
import { errorWords } from "../loggerTrust.ts";
import { type Sentence, strong } from "../sentence.ts";
import { degrees, degreesRange, thermostatName, twoDates, way } from "../thermostatWords.ts";
import { columnWords } from "../varieties/columnWords.ts";
import { roughDate } from "../yieldMoistureAnswer.ts";
import { heaterWhat, powerWhat } from "./heaterWords.ts";
import type { ReviewReader } from "./reader.ts";

type Say<Kind extends Fact["kind"]> = (fact: Extract<Fact, { kind: Kind }>, reader: ReviewReader) => Sentence;

const since = ({ from, to }: Fact, { timeZone }: ReviewReader): string => `since ${roughDate(from, to, timeZone)}`;
const batches = (count: number): string => counted(count, "batch", "batches");

const hours: Say<"kiln hours"> = (fact, reader) => {
  const { estimate, low, high } = fact.hoursOver;
  const slower = estimate > 0;
  const [from, to] = slower ? [low, high] : [-high, -low];
  return [
    `${countedInWords(fact.runCount, "batch", "batches")} ${since(fact, reader)} took `,
    strong(`${print(Math.abs(estimate), "hours", "metric")} ${slower ? "longer" : "less"}`),
    ` in the kiln than air and bed account for (${printRange(from, to, "hours", "metric")}).`,
  ];
};

const chart: Say<"chart"> = (fact, reader) => {
  const off = strong(`${points(fact.size)} ${fact.size > 0 ? "high" : "low"}`);
  if (fact.single) return [`The ${measureName[fact.measure]} of batch ${fact.runs[0] ?? ""} was `, off, "."];
  const whose = fact.variety === null ? "" : ` of ${fact.variety}`;
  const name = `${fact.measure === "dry_yield_pct" ? "Yield" : "Moisture"}${whose}`;
  return [`${name} has run `, off, ` ${since(fact, reader)}, over ${batches(fact.runCount)}.`];
};

const within: Say<"uneven batch"> = (fact) => [
  `${fact.runCount === 1 ? `Batch ${fact.runs[0] ?? ""} was` : `${countedInWords(fact.runCount, "batch", "batches")} were`} `,
  strong("uneven in moisture"),
  `: samples lie ${printNumber(fact.spreadPoints, 2)} points apart where ${printNumber(fact.usualPoints, 2)} is usual (standard deviations).`,
];

const SHAPES: Readonly<Record<ThermostatFact["shape"], string>> = {
  creep: "has crept",
  step: "has stepped",
  unexplained: "has moved",
  "worn contacts": "switches more widely than it did, as with worn contacts; its middle has moved",
  "weak heater or fan": "has moved together with a slower rise, as with a weak heater or fan:",
};

/** `; it leaves its tolerance between …`; empty where that cannot be dated. */
function leavesWords({ leavesFrom, leavesTo, to }: ThermostatFact, { timeZone }: ReviewReader): string {
  if (leavesFrom === null) return "";
  if (leavesTo !== null && leavesTo <= to) return "; it lies outside its tolerance";
  if (leavesFrom <= to) return "; it may already have left its tolerance";
  return leavesTo === null
    ? `; it may leave its tolerance from ${printDateInFull(leavesFrom, timeZone)} on`
    : `; it leaves its tolerance between ${twoDates(leavesFrom, leavesTo, timeZone)}`;
}

const thermostat: Say<"thermostat"> = (fact, reader) => {
  const { hold, shape, movedKelvin, widerKelvin, kelvinPerMonth } = fact;
  if (widerKelvin !== null) {
    const { estimate, low, high } = widerKelvin;
    return [
      `Kiln ${fact.kiln}: the ${thermostatName[hold]} has switched on and off `,
      strong(`${degrees(estimate, reader.units)} further apart`),
      ` ${since(fact, reader)} (${degreesRange(low, high, reader.units)}), as with worn contacts.`,
    ];
  }
  const rate =
    kelvinPerMonth === null
      ? ""
      : `, ${degreesRange(kelvinPerMonth.low, kelvinPerMonth.high, reader.units, 2)} a month`;
  const doubt = fact.loggerDoubt ? " Or the logger is the one that is off." : "";
  return [
    `Kiln ${fact.kiln}: the ${thermostatName[hold]} ${SHAPES[shape]} `,
    strong(`${way(movedKelvin)} ${degrees(movedKelvin, reader.units)}`),
    ` ${since(fact, reader)}${rate}${leavesWords(fact, reader)}.${doubt}`,
  ];
};

const logger: Say<"logger"> = ({ kiln, errorKelvin, daysSinceCheck }, { units }) => {
  if (errorKelvin !== null) {
    return [`Kiln ${kiln}: its check found the logger `, strong(errorWords(errorKelvin, units)), "."];
  }
  const when =
    daysSinceCheck === null
      ? "has never been checked"
      : `was last checked ${counted(Math.floor(daysSinceCheck), "day")} before the last load`;
  return [`Kiln ${kiln}: the logger `, strong(when), "; what its readings say of the thermostat may be its own error."];
};

const energy: Say<"energy"> = ({ perKilogramOver: { estimate, low, high }, runCount }, { units }) => [
  `The latest ${batches(runCount)} took `,
  strong(`${print(estimate, "energyPerMass", units)} more`),
  ` for the water they lost than air and bed account for (${printRange(low, high, "energyPerMass", units)}).`,
];

const variety: Say<"variety"> = ({ variety: name, onTarget, low, high, measure }) => [
  `${name} meets every tolerance in `,
  strong(`${printNumber(onTarget, 0)} of 100 batches`),
  low === null || high === null ? "" : ` (${printNumber(low, 0)} to ${printNumber(high, 0)})`,
  `; ${columnWords(measure).words} costs it most.`,
];

const lot: Say<"lot"> = ({ variety: name, lot: which, measure, uneven, size }, { units }) => {
  const { words, difference } = columnWords(measure);
  if (uneven || size === null) return [`Lot ${which} of ${name} is `, strong("uneven in itself"), ` in ${words}.`];
  const off = `${print(Math.abs(size.estimate), difference, units)} ${size.estimate > 0 ? "higher" : "lower"}`;
  return [`Lot ${which} of ${name} lies `, strong(off), ` in ${words} than its other lots.`];
};

const steep: Say<"steep"> = (fact) => {
  const { estimate, low, high } = fact.points;
  const [from, to] = estimate > 0 ? [low, high] : [-high, -low];
  const size = strong(`${points(estimate)} ${estimate > 0 ? "above" : "below"}`);
  if (fact.shape === "bias moved") {
    return [
      `In the latest ${batches(fact.runCount)} with both, measured steep-out moisture lies `,
      strong(`${points(Math.abs(estimate))} ${estimate > 0 ? "higher" : "lower"}`),
      ` against what the gain in mass says than it used to (${pointsRange(from, to)}): scale or moisture meter has moved.`,
    ];
  }
  return fact.shape === "bias"
    ? ["Measured steep-out moisture lies ", size, ` what the gain in mass says (${pointsRange(from, to)}).`]
    : [
        `The latest ${batches(fact.runCount)} came out of the steep `,
        size,
        ` the house’s usual (${pointsRange(from, to)}).`,
      ];
};

const bed: Say<"bed"> = ({ bed: name, difference: { estimate, low, high }, atOneTemperature, runCount }) => {
  const [from, to] = estimate > 0 ? [low, high] : [-high, -low];
  return [
    `Bed ${name} has grown `,
    strong(`${printNumber(Math.abs(estimate), 2)} of a kernel ${estimate > 0 ? "longer" : "shorter"}`),
    `${atOneTemperature ? " at the same bed temperature" : ""} against the beds beside it than it used to, in the latest ${batches(runCount)} (${printNumber(from, 2)} to ${printNumber(to, 2)}).`,
  ];
};

const timetable: Say<"timetable"> = ({ lengthOver, hoursOver, bedMeanCelsius, runCount }, { units }) => {
  const { estimate } = lengthOver;
  const at = bedMeanCelsius === null ? "" : ` with beds at ${print(bedMeanCelsius, "temperature", units)}`;
  const hoursWords =
    hoursOver === null
      ? ""
      : ` At that temperature the timetable is some ${printNumber(Math.abs(hoursOver.estimate), 0)} hours too ${hoursOver.estimate > 0 ? "long" : "short"}.`;
  return [
    `The latest ${batches(runCount)} grew `,
    strong(`${printNumber(Math.abs(estimate), 2)} of a kernel ${estimate > 0 ? "beyond" : "short of"} the target`),
    `${at}.${hoursWords}`,
  ];
};

const laboratory: Say<"laboratory"> = ({ points: { estimate, low, high }, moved, runCount }) => {
  const [from, to] = estimate > 0 ? [low, high] : [-high, -low];
  if (moved) {
    return [
      "The house’s moisture reads ",
      strong(`${points(estimate)} ${estimate > 0 ? "higher" : "lower"}`),
      ` against the laboratory’s than it used to, over the latest ${batches(runCount)} tested (${pointsRange(from, to)}).`,
    ];
  }
  return [
    "The house’s moisture reads ",
    strong(`${points(estimate)} ${estimate > 0 ? "above" : "below"}`),
    ` the laboratory’s, over ${batches(runCount)} (${pointsRange(from, to)}).`,
  ];
};

/** What inside names are called in a sentence. */
export const FIELD_WORDS: Readonly<Record<string, string>> = {
  grainInKilograms: "grain in",
  maltOutKilograms: "malt out",
  finalMoisturePercent: "final moisture",
  kilnHours: "kiln times",
  bedDepthMetres: "bed depth",
  steepOutMoisturePercent: "steep-out moisture",
  acrospireMean: "acrospire counts",
  energyKilowattHours: "energy",
};

const logs: Say<"logs"> = ({ rowsSetAside, batchesLost, valuesBlanked, missing }) => {
  const faults = [
    rowsSetAside > 0 ? `${counted(rowsSetAside, "row")} could not be read` : null,
    valuesBlanked > 0 ? `${counted(valuesBlanked, "value")} made no sense` : null,
    missing.length > 0 ? `${listed(missing.map((field) => FIELD_WORDS[field] ?? field))} stopped being logged` : null,
  ].filter((fault) => fault !== null);
  const lost =
    batchesLost === 0
      ? ""
      : ` ${counted(batchesLost, "batch", "batches")} without a readable row of the kiln ${batchesLost === 1 ? "is" : "are"} counted on no page.`;
  return ["In the logs ", strong(listed(faults)), `.${lost}`];
};

const orders: Say<"orders"> = ({ kilogramsShort, startFirst }, { units }) => [
  "Orders lack ",
  strong(`${print(kilogramsShort, "mass", units)} of malt`),
  `, more than the house’s pace will make in time${startFirst === null ? "" : `; ${startFirst} comes first`}.`,
];

/** What a fact says: a sentence with the number, its unit and its interval where it is an estimate. */
export function factWhat(fact: Fact, reader: ReviewReader): Sentence {
  switch (fact.kind) {
    case "kiln hours":
      return hours(fact, reader);
    case "chart":
      return chart(fact, reader);
    case "uneven batch":
      return within(fact, reader);
    case "thermostat":
      return thermostat(fact, reader);
    case "logger":
      return logger(fact, reader);
    case "energy":
      return energy(fact, reader);
    case "power limit":
      return powerWhat(fact);
    case "heater":
      return heaterWhat(fact);
    case "variety":
      return variety(fact, reader);
    case "lot":
      return lot(fact, reader);
    case "steep":
      return steep(fact, reader);
    case "bed":
      return bed(fact, reader);
    case "timetable":
      return timetable(fact, reader);
    case "laboratory":
      return laboratory(fact, reader);
    case "logs":
      return logs(fact, reader);
    case "orders":
      return orders(fact, reader);
  }
}
