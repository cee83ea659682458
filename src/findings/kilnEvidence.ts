import type { Coverage, EnergySummary, GuessComparison, UnderWay, UnfittedLoad } from "../report/kilnHoursResult.ts";
import { printClock, printDate } from "../units/instant.ts";
import { print, printNumber } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { counted, listed } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

const HOUR = 3_600_000;
/** No estimate of a kiln is good to the minute. */
const TEN_MINUTES = 600_000;
const percent = (value: number): string => print(value, "percent", "metric", { decimals: 0 });

/** Each way of guessing, as the page names it. */
export const guessName: Readonly<Record<GuessComparison["guesses"][number]["kind"], string>> = {
  "drying-air": "drying power of the air, water and depth",
  "humidity-and-depth": "humidity and bed depth",
  "last-five": "mean of the last five loads",
  "mean-so-far": "mean of all loads before",
};

/** Whether the 90 % interval, made before each load, held what it promised. */
export function coverageSentence(coverage: Coverage): Sentence {
  const { held, of, percent: share } = coverage;
  if (of === 0) return ["No load has yet been estimated ahead, so the 90\u00a0% interval is untried."];
  const judgement =
    share.high < 90
      ? " That is fewer than promised: read the interval as too narrow."
      : share.low > 90
        ? " That is more than promised: the interval is wider than it need be."
        : "";
  return [
    "The 90\u00a0% interval, made before each load, held ",
    strong(`${printNumber(held, 0)} of ${printNumber(of, 0)}`),
    ` (${percent(share.estimate)}; ${percent(share.low)} to ${percent(share.high)} allowing for chance).${judgement}`,
  ];
}

/** Which guess is best, named only where the lead is beyond doubt. */
export function guessSentence(comparison: GuessComparison): Sentence {
  const on = `on ${counted(comparison.loads, "load")}, each guessed from those before it`;
  const [best, second] = comparison.guesses;
  if (comparison.winner !== null) {
    return [`Best ${on}: `, strong(guessName[comparison.winner]), ". The lead is more than chance gives."];
  }
  if (best === undefined || second === undefined) return [`Judged ${on}.`];
  return [`Judged ${on}. The first two cannot be told apart: the lead is no more than chance gives.`];
}

/** What a load takes in energy, beside the least that evaporation alone would take. */
export function energySentence(energy: EnergySummary, units: UnitSystem): Sentence {
  const mass = units === "us" ? "pound" : "kilogram";
  return [
    "A load takes ",
    strong(print(energy.medianKilowattHours, "energy", units)),
    ", ",
    strong(print(energy.medianPerKilogramWater, "energyPerMass", units)),
    ` of water removed; to evaporate a ${mass} at ${print(energy.floorCelsius, "temperature", units, { decimals: 0 })} takes at least `,
    `${print(energy.latentHeatFloor, "energyPerMass", units)} (middle of ${counted(energy.loads.length, "load")}).`,
  ];
}

/** How many loads no fit used, by reason, the commonest first. */
export function unfittedSentence(unfitted: readonly UnfittedLoad[]): Sentence {
  if (unfitted.length === 0) return ["Every load is in the fit."];
  const byReason = new Map<string, number>();
  for (const { reason } of unfitted) byReason.set(reason, (byReason.get(reason) ?? 0) + 1);
  const reasons = [...byReason].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return [
    `${counted(unfitted.length, "load")} ${unfitted.length === 1 ? "is" : "are"} not in the fit: `,
    `${listed(reasons.map(([reason, count]) => `${printNumber(count, 0)} ${reason}`))}.`,
  ];
}

/** `In the kiln since 18:05 on 30 Oct 2026: off about 08:10, between 06:50 and 09:30 in 90 of 100 such loads.` */
export function underWaySentence(load: UnderWay, timeZone: string): Sentence {
  const since = `since ${printClock(load.loadedAt, timeZone)} on ${printDate(load.loadedAt, timeZone)}`;
  if (load.hours === null)
    return [`In the kiln ${since}; no estimate${load.whyNot === null ? "" : `, since ${load.whyNot}`}.`];
  const moment = (hours: number): number => Math.round((load.loadedAt + hours * HOUR) / TEN_MINUTES) * TEN_MINUTES;
  const at = (hours: number): string => printClock(moment(hours), timeZone);
  return [
    `In the kiln ${since}: off about `,
    strong(at(load.hours.estimate)),
    ` on ${printDate(moment(load.hours.estimate), timeZone)}, in 90 of 100 such loads between `,
    `${at(load.hours.low)} and ${at(load.hours.high)}.`,
  ];
}
