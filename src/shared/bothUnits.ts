import { type MaltMeasure, measureUnit, printMeasure } from "../units/maltMeasure.ts";
import { type PrintOptions, print } from "../units/print.ts";
import type { Quantity } from "../units/quantity.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import type { PassedLimits } from "./projection.ts";

const otherThan = (units: UnitSystem): UnitSystem => (units === "metric" ? "us" : "metric");

/** `600 kg (1323 lb)`, the house's own units first; once where both systems say the same. */
export function printBoth(value: number, quantity: Quantity, units: UnitSystem, options: PrintOptions = {}): string {
  const own = print(value, quantity, units, options);
  const other = print(value, quantity, otherThan(units), options);
  return own === other ? own : `${own} (${other})`;
}

/** The same for a measure of the malt: `3.5 EBC (1.8 SRM)`. */
export function printMeasureBoth(measure: MaltMeasure, value: number, units: UnitSystem): string {
  const own = printMeasure(measure, value, units);
  const other = printMeasure(measure, value, otherThan(units));
  return measureUnit(measure, "metric") === measureUnit(measure, "us") ? own : `${own} (${other})`;
}

function limitsIn(measure: MaltMeasure, { low, high }: PassedLimits, units: UnitSystem): string {
  if (low !== null && high !== null) {
    return `${printMeasure(measure, low, units, { bare: true })} to ${printMeasure(measure, high, units)}`;
  }
  if (low !== null) return `at least ${printMeasure(measure, low, units)}`;
  return high === null ? "" : `at most ${printMeasure(measure, high, units)}`;
}

/** `2.5 to 5.0 EBC (1.3 to 2.5 SRM)`, `at least 80.0 %`; empty without limits. */
export function printLimitsBoth(measure: MaltMeasure, limits: PassedLimits, units: UnitSystem): string {
  const own = limitsIn(measure, limits, units);
  if (measureUnit(measure, "metric") === measureUnit(measure, "us")) return own;
  return own === "" ? "" : `${own} (${limitsIn(measure, limits, otherThan(units))})`;
}
