import type { ForeignColumn } from "./foreignMatch.ts";

/** Headings are compared without regard to case and to how much white space stands between their words. */
export const plainHeading = (text: string): string =>
  text
    .normalize("NFC")
    .replaceAll(/[\s\u00a0\u202f\ufeff]+/gu, " ")
    .trim()
    .toLowerCase();

/** Where `column` stands among `headings`, from 0; -1 where it does not, -2 where its heading stands twice. */
export function placeOf(column: ForeignColumn, headings: readonly string[]): number {
  if (typeof column === "number") return column <= headings.length ? column - 1 : -1;
  const wanted = plainHeading(column);
  const first = headings.findIndex((heading) => plainHeading(heading) === wanted);
  return first >= 0 && headings.findLastIndex((heading) => plainHeading(heading) === wanted) !== first ? -2 : first;
}

/** A column as it is said to a reader: its heading, or its place. */
export const sayColumn = (column: ForeignColumn): string => (typeof column === "number" ? `column ${column}` : column);
