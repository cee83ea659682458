import type { LoggerTrust } from "../../report/thermostatResult.ts";
import { printDateInFull } from "../../units/instant.ts";
import { print, printNumber } from "../../units/print.ts";
import type { FigureSettings } from "../figureSettings.ts";
import { degreeWords } from "./degreeWords.ts";

type Check = LoggerTrust["checks"][number];

/** Reading less reference, K. */
export const errorOf = ({ readingCelsius, referenceCelsius }: Check): number => readingCelsius - referenceCelsius;

/**
 * @param latest the readings of the last check
 * @param reach half-width of its interval, K; 0 where no uncertainty is known
 */
export function checksSentence(
  { daysSinceCheck, loggerDays, stale, faults }: LoggerTrust,
  latest: readonly Check[],
  reach: number,
  settings: FigureSettings,
): string {
  const { units, timeZone } = settings;
  const { difference, size } = degreeWords(settings);
  const found = [...latest]
    .sort((a, b) => a.referenceCelsius - b.referenceCelsius)
    .map(
      (check) =>
        `${difference(errorOf(check))} at ${print(check.referenceCelsius, "temperature", units, { decimals: 0 })}`,
    );
  const when = latest[0] === undefined ? "" : ` on ${printDateInFull(latest[0].at, timeZone)}`;
  const sure = reach === 0 ? "" : ` (upright lines: ±${size(reach)}, two standard uncertainties)`;
  const allowed = stale
    ? `more than the ${loggerDays} that the house allows: thermostat and logger cannot be told apart`
    : `within the ${loggerDays} that the house allows`;
  const age =
    daysSinceCheck === null ? "" : ` That is ${printNumber(Math.max(0, daysSinceCheck), 0)} days ago, ${allowed}.`;
  return `The last check${when} found ${found.join(", ")}${sure}.${age}${faults.map((fault) => ` ${fault}`).join("")}`;
}
