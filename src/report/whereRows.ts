import { quoteInstant, quoteText } from "../engine/quote.ts";
import type { RowFilter } from "./rowFilter.ts";

/** Lets every row through. */
export const everyRow: RowFilter = { loadedFrom: null, loadedBefore: null, variety: null, kiln: null };

/** The WHERE clause of a filter over a table with `variety`, `kiln` and the instant column `moment`; empty without one. */
export function whereRows(filter: RowFilter, moment: string): string {
  const { loadedFrom, loadedBefore, variety, kiln } = filter;
  const conditions = [
    loadedFrom === null ? null : `${moment} >= ${quoteInstant(loadedFrom)}`,
    loadedBefore === null ? null : `${moment} < ${quoteInstant(loadedBefore)}`,
    variety === null ? null : `variety = ${quoteText(variety)}`,
    kiln === null ? null : `kiln = ${quoteText(kiln)}`,
  ].filter((condition) => condition !== null);
  return conditions.length === 0 ? "" : `WHERE ${conditions.join(" AND ")}`;
}

/** A SELECT list that gives each column of `run_rows` or `load_rows` its name in TypeScript. */
export function selectAs(columns: Readonly<Record<string, string>>): string {
  return Object.entries(columns)
    .map(([name, column]) => `${column} AS "${name}"`)
    .join(", ");
}
