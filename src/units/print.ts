import { type Quantity, shownAs } from "./quantity.ts";
import type { UnitSystem } from "./unitSystem.ts";

const MINUS = "\u2212";
/** Between a number and its unit, so that the two never part at a line's end (SI Brochure, 9th ed., 5.4.3). */
const NO_BREAK = "\u00a0";
const THIN = "\u202f";

/**
 * A number with a fixed count of decimals, a true minus sign and thin spaces between thousands from 10 000 up.
 * Own assembly, not `toLocaleString`: the text must be the same in Node and in every browser.
 *
 * @throws {RangeError} when `value` is not finite: too little data is a sentence, never NaN.
 */
export function printNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`printNumber requires a finite number; got ${value}`);
  const digits = Math.abs(value).toFixed(decimals);
  const [whole = "0", part] = digits.split(".");
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole;
  const isZero = !/[1-9]/.test(digits);
  return `${value < 0 && !isZero ? MINUS : ""}${grouped}${part === undefined ? "" : `.${part}`}`;
}

/** As {@link printNumber}, with a plus sign before what is above zero: for differences and effects. */
export function printSigned(value: number, decimals: number): string {
  const text = printNumber(value, decimals);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

export interface PrintOptions {
  /** Instead of the quantity's usual number of decimals. */
  readonly decimals?: number;
  readonly signed?: boolean;
  /** Leave the unit off, where a heading already says it. */
  readonly bare?: boolean;
}

/**
 * A quantity as a reader of `system` sees it: `print(0.155, "bedDepth", "metric")` is `15.5 cm`.
 *
 * @param insideValue the value in the unit kept inside (see {@link Quantity})
 */
export function print(insideValue: number, quantity: Quantity, system: UnitSystem, options: PrintOptions = {}): string {
  const { unit, factor, offset, decimals } = shownAs(quantity, system);
  const shown = insideValue * factor + offset;
  const places = options.decimals ?? decimals;
  const number = options.signed ? printSigned(shown, places) : printNumber(shown, places);
  return options.bare || unit === "" ? number : `${number}${NO_BREAK}${unit}`;
}

/** A range with its unit said once: `0.6 to 1.0 h`. */
export function printRange(
  low: number,
  high: number,
  quantity: Quantity,
  system: UnitSystem,
  options: PrintOptions = {},
): string {
  return `${print(low, quantity, system, { ...options, bare: true })} to ${print(high, quantity, system, options)}`;
}

/** A p-value as readers expect it: never 0, never more digits than it deserves. */
export function printPValue(p: number): string {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`printPValue requires a probability; got ${p}`);
  if (p < 0.001) return `<${NO_BREAK}0.001`;
  return p.toFixed(p < 0.1 ? 3 : 2);
}
