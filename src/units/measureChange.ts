import { maltMeasure } from "./maltMeasure.ts";
import { print, printRange } from "./print.ts";
import { shownAs } from "./quantity.ts";
import type { UnitSystem } from "./unitSystem.ts";

/**
 * Decimals to which a level and a change of it are said alike. Final moisture is held within tenths of a point, so that its
 * changes are hundredths.
 */
const DECIMALS: Readonly<Record<string, number>> = {
  kiln_hours: 1,
  energy_kwh: 0,
  final_moisture_pct: 2,
  dry_yield_pct: 1,
  steep_out_moisture_pct: 1,
  acrospire_mean: 2,
};
const USUAL_DECIMALS = 2;

export const changeDecimals = (measure: string): number => DECIMALS[measure] ?? USUAL_DECIMALS;

/** A level before or after a change: `13.4 h`, `4.51 %`. */
export const printLevel = (measure: string, value: number, units: UnitSystem, bare = false): string =>
  print(value, maltMeasure(measure).quantity, units, { decimals: changeDecimals(measure), bare });

/** A change without its sign: `1.4 h`, `0.13 points`. */
export const printSize = (measure: string, value: number, units: UnitSystem): string =>
  print(Math.abs(value), maltMeasure(measure).difference, units, { decimals: changeDecimals(measure) });

/** A change with its sign: `−1.4 h`. */
export const printChange = (measure: string, value: number, units: UnitSystem, bare = false): string =>
  print(value, maltMeasure(measure).difference, units, { decimals: changeDecimals(measure), signed: true, bare });

/** What a change is counted in: `h`, `points`; empty where it has no unit. */
export const changeUnit = (measure: string, units: UnitSystem): string =>
  shownAs(maltMeasure(measure).difference, units).unit;

/** `0.4 to 2.3 h` where both ends lie on one side of nothing, `−0.6 to +1.3 h` where they do not. */
export function printSpan(
  measure: string,
  { low, high }: { readonly low: number; readonly high: number },
  units: UnitSystem,
): string {
  const { difference } = maltMeasure(measure);
  const decimals = changeDecimals(measure);
  if (low * high <= 0) return printRange(low, high, difference, units, { decimals, signed: true });
  const [from, to] = low > 0 ? [low, high] : [-high, -low];
  return printRange(from, to, difference, units, { decimals });
}
