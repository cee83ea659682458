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
  { daysSinceCheck, loggerDays, stale }: LoggerTrust,
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
  return `The last check${when} found ${found.join(", ")}${sure}.${ageSaid(daysSinceCheck, loggerDays, stale)}`;
}

function ageSaid(days: number | null, allowed: number, stale: boolean): string {
  const apart = "thermostat and logger cannot be told apart";
  if (days === null) return stale ? ` Air on was never checked, so ${apart}.` : "";
  const age = ` That was ${printNumber(Math.max(0, days), 0)} days before the latest load, `;
  return `${age}${stale ? `more than the ${allowed} that the house allows: ${apart}` : `within the ${allowed} that the house allows`}.`;
}
