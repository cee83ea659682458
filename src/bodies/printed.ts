import { printDate, printMoment } from "../units/instant.ts";
import { type PrintOptions, print } from "../units/print.ts";
import type { Quantity } from "../units/quantity.ts";
import type { UnitSystem } from "../units/unitSystem.ts";

/** What a table shows where nothing was logged. */
export const NOT_LOGGED = "–";

/** A logged value as text, or a dash where there is none. */
export function printed(
  value: number | null,
  quantity: Quantity,
  units: UnitSystem,
  options: PrintOptions = {},
): string {
  return value === null || !Number.isFinite(value) ? NOT_LOGGED : print(value, quantity, units, options);
}

export const printedDate = (at: number | null, timeZone: string): string =>
  at === null ? NOT_LOGGED : printDate(at, timeZone);

export const printedMoment = (at: number | null, timeZone: string): string =>
  at === null ? NOT_LOGGED : printMoment(at, timeZone);
