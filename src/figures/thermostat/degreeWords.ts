import { print } from "../../units/print.ts";
import { toShown } from "../../units/quantity.ts";
import type { FigureSettings } from "../figureSettings.ts";

/** How differences of temperature are drawn and said to a reader; all values handed over are in kelvins. */
export interface DegreeWords {
  readonly shown: (kelvin: number) => number;
  /** `+0.4 °C`, always signed. */
  readonly difference: (kelvin: number) => string;
  readonly bareDifference: (kelvin: number) => string;
  /** `0.4 °C`, of a size that has no direction. */
  readonly size: (kelvin: number) => string;
  readonly bareSize: (kelvin: number) => string;
  /** `−0.68 to −0.42`. */
  readonly range: (low: number, high: number) => string;
}

/** @param decimals of everything printed; one where not given, two for rates */
export function degreeWords({ units }: FigureSettings, decimals = 1): DegreeWords {
  const quantity = "temperatureDifference";
  const bareDifference = (kelvin: number): string =>
    print(kelvin, quantity, units, { decimals, signed: true, bare: true });
  return {
    shown: (kelvin) => toShown(kelvin, quantity, units),
    difference: (kelvin) => print(kelvin, quantity, units, { decimals, signed: true }),
    bareDifference,
    size: (kelvin) => print(Math.abs(kelvin), quantity, units, { decimals }),
    bareSize: (kelvin) => print(Math.abs(kelvin), quantity, units, { decimals, bare: true }),
    range: (low, high) => `${bareDifference(low)} to ${bareDifference(high)}`,
  };
}
