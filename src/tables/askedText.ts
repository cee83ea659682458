import type { AskedAnswer, AskedKind, AskedValue } from "./askedAnswer.ts";
import { guardedCsv } from "./guardedCsv.ts";

/** A value as a file holds it: numbers in full, times and dates by ISO as the question gave them, nothing for null. */
export function askedText(value: AskedValue, kind: AskedKind): string {
  if (value === null) return "";
  if (typeof value === "number" && (kind === "instant" || kind === "date")) {
    const text = new Date(value).toISOString();
    return kind === "date" ? text.slice(0, 10) : text.slice(0, 19).replace("T", " ");
  }
  return String(value);
}

/** An answer as a CSV file that is safe to open in a spreadsheet. */
export function askedCsv({ columns, rows }: AskedAnswer): string {
  return guardedCsv([
    columns.map(({ name }) => name),
    ...rows.map((row) => row.map((value, at) => askedText(value, columns[at]?.kind ?? "text"))),
  ]);
}
