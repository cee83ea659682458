import type { Column } from "../declarations.ts";
import { fileNames } from "../insideName.ts";

/** What a heading (or the row of units under it) says of the unit. */
export interface SaidUnit {
  /** Suffix of the log format: `c`, `f`, `kg`, `lb`, `cm`, `in`, `ebc`, `srm`, `wk`, `lintner`. */
  readonly suffix: string;
  /** What makes the file's number one of that suffix. */
  readonly times: number | null;
}

/** Exact by definition but for the ounce's name; a tonne is 1000 kg, a US ton 2000 lb (NIST SP 811, appendix B.8). */
const SAID: readonly (readonly [RegExp, string, number | null])[] = [
  [/(°|º|deg\.?\s*|degrees\s*)f\b|fahrenheit|[\s([_,]f\)?\]?$/i, "f", null],
  [/(°|º|deg\.?\s*|degrees\s*)c\b|celsius|centigrade|[\s([_,]c\)?\]?$/i, "c", null],
  [/\b(short|us) tons?\b/i, "lb", 2000],
  [/\btonnes?\b|[([]t[)\]]|_t$/i, "kg", 1000],
  [/\bkgs?\b|_kg$|kilo/i, "kg", null],
  [/\blbs?\b|_lbs?$|pounds?|#$/i, "lb", null],
  [/\bgrams?\b|[([]g[)\]]/i, "kg", 0.001],
  [/\bmm\b|_mm$|millimet/i, "cm", 0.1],
  [/\bcms?\b|_cm$|centimet/i, "cm", null],
  [/[([]m[)\]]|\bmet(re|er)s?\b/i, "cm", 100],
  [/\binch(es)?\b|[([]in\.?[)\]]|_in$|"$|[″”]/i, "in", null],
  [/\bft\b|\bfeet\b/i, "in", 12],
  [/\bebc\b/i, "ebc", null],
  [/\bsrm\b|\basbc\b/i, "srm", null],
  [/\bwk\b|windisch/i, "wk", null],
  [/\blintner\b|°l\b/i, "lintner", null],
];

/** The unit that a text names, among those that `column` may be written in; null where it names none of them. */
export function saidUnit(text: string, column: Column): SaidUnit | null {
  const suffixes = column.family?.suffixes.map(({ suffix }) => suffix) ?? [];
  for (const [pattern, suffix, times] of SAID) {
    if (suffixes.includes(suffix) && pattern.test(text.trim())) return { suffix, times };
  }
  return null;
}

/** The name of `column` in the log format with this suffix; the first of its names where there is no choice. */
export function nameWith(column: Column, suffix: string | null): string {
  const names = fileNames(column);
  return (names.find((name) => name.suffix?.suffix === suffix) ?? names[0])?.name ?? column.stem;
}

const UNIT_WORDS =
  /\((.*?)\)|\[(.*?)\]|[°º]\s*[cfl]\b|%\s*rh|%|\b(deg(rees)?|celsius|fahrenheit|centigrade|kgs?|lbs?|pounds?|tonnes?|mm|cms?|inch(es)?|hrs|hours? of|gmt|utc|ebc|srm)\b|"$/gi;

/** The words of a heading without its units, lower case: `Bed depth (cm)` is bed and depth. */
export function wordsOf(heading: string): readonly string[] {
  return heading
    .replaceAll(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .replaceAll(UNIT_WORDS, " ")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "" && !/^(the|of|c|f|kg|lb|lbs|cm|mm)$/.test(word))
    .map((word) => (word === "temperature" ? "temp" : word));
}
