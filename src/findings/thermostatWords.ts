import type { HoldName, ThermostatStretch } from "../report/thermostatResult.ts";
import { printDateInFull } from "../units/instant.ts";
import { print, printRange } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";

/** Which thermostat a sentence speaks of: the one that holds the drying, or the one that holds the cure. */
export const thermostatName: Readonly<Record<HoldName, string>> = {
  drying: "drying thermostat",
  cure: "cure thermostat",
};

export const holdTitle: Readonly<Record<HoldName, string>> = { drying: "Drying hold", cure: "Cure" };

/** Who reads it, and where. */
export interface Reader {
  readonly units: UnitSystem;
  readonly timeZone: string;
}

/** The size of a difference of temperatures, without its sign: `1.1 °C`. */
export const degrees = (kelvin: number, units: UnitSystem, decimals = 1): string =>
  print(Math.abs(kelvin), "temperatureDifference", units, { decimals });

/** `0.41 to 0.69 °C`, the smaller size first whatever the sign. */
export function degreesRange(low: number, high: number, units: UnitSystem, decimals = 1): string {
  const [from, to] = low < 0 && high <= 0 ? [-high, -low] : [low, high];
  return printRange(from, to, "temperatureDifference", units, { decimals });
}

/** Both ends with their signs: `−1.3 to −0.7 °C`. */
export const degreesSigned = (low: number, high: number, units: UnitSystem, decimals = 1): string =>
  printRange(low, high, "temperatureDifference", units, { decimals, signed: true });

/** `down`, or `up`. */
export const way = (kelvin: number): "up" | "down" => (kelvin < 0 ? "down" : "up");

/** Where an offset lies: `0.4 °C below its set point`, or `at its set point`. */
export function besideSetPoint(kelvin: number, units: UnitSystem): string {
  const size = degrees(kelvin, units);
  return /[1-9]/.test(size) ? `${size} ${kelvin < 0 ? "below" : "above"} its set point` : "at its set point";
}

/** What stands at the start of a stretch: `its calibration on 24 June 2025`, `the first load`. */
export function startOfStretch({ event }: ThermostatStretch, whose: "its" | "their" = "its"): string {
  if (event === null) return "the first load";
  // An event has a date and no clock: its UTC midnight is that date.
  return `${whose} ${event.kind} on ${printDateInFull(event.on, "UTC")}`;
}

/** `20 January and 15 March 2027`; the first year is named where it is another. */
export function twoDates(from: number, to: number, timeZone: string): string {
  const [first, last] = [printDateInFull(from, timeZone), printDateInFull(to, timeZone)];
  const yearOf = (date: string): string => date.slice(-4);
  return `${yearOf(first) === yearOf(last) ? first.slice(0, -5) : first} and ${last}`;
}
