import type { LoggerTrust } from "../report/thermostatResult.ts";
import { print, printNumber } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";
import { degrees, type Reader } from "./thermostatWords.ts";

/** `0.4 °C too high`, or `right`. */
export function errorWords(errorKelvin: number, units: UnitSystem): string {
  const size = degrees(errorKelvin, units);
  return /[1-9]/.test(size) ? `${size} too ${errorKelvin > 0 ? "high" : "low"}` : "right";
}

/** When it was last checked, what it was off by then, and what was done with that. */
export function trustSentence(logger: LoggerTrust, { units }: Reader): Sentence {
  const { daysSinceCheck, loggerDays, errorKelvin, uncertaintyKelvin } = logger;
  if (daysSinceCheck === null) {
    return ["No check of the logger is logged, so that its readings stand as they were written."];
  }
  const checked: Sentence = [
    "Its air-on probe was last checked ",
    strong(`${counted(Math.floor(daysSinceCheck), "day")} before the last load`),
    `; the house allows ${printNumber(loggerDays, 0)}.`,
  ];
  if (errorKelvin === null) {
    return [
      ...checked,
      " No check was made hot, so that hot readings stand as they were written: ice alone corrects none.",
    ];
  }
  const within =
    uncertaintyKelvin === null ? "" : `, give or take ${degrees(2 * uncertaintyKelvin, units)} (95\u00a0%)`;
  return [
    ...checked,
    ` At the drying set point it then read ${errorWords(errorKelvin, units)}${within}. `,
    "What the checks found is taken off every reading, in proportion to time between two checks and in one step where the logger was worked on.",
  ];
}

/** How to check it, each way in a sentence; the one in boiling water carries its caution. */
export function checkWays(boilingCelsius: number, altitudeMetres: number, units: UnitSystem): readonly Sentence[] {
  const ice = print(0, "temperature", units, { decimals: units === "us" ? 0 : 1 });
  const boil = print(boilingCelsius, "temperature", units, { decimals: 1 });
  const height =
    units === "us" ? `${printNumber(altitudeMetres / 0.3048, 0)}\u00a0ft` : `${printNumber(altitudeMetres, 0)}\u00a0m`;
  return [
    [
      `In crushed ice with just enough clean water to fill the gaps, stirred, a sound probe reads ${ice}. Ice alone does not say what it reads hot.`,
    ],
    [
      `In gently boiling water, ${height} above the sea, it reads ${boil} (10\u00a0hPa of weather move that by about ${degrees(0.3, units)}: go by a barometer where there is one). `,
      "Steam and boiling water burn: gloves, a lid with a hole for the probe, face and hands out of the steam.",
    ],
  ];
}
