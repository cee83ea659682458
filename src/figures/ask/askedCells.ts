import type { AskedAnswer, AskedColumn, AskedValue } from "../../tables/askedAnswer.ts";
import { printIsoDate } from "../../units/instant.ts";
import { printNumber } from "../../units/print.ts";
import type { DataTable } from "../figureSpec.ts";
import { MOST_ROWS } from "../listedRows.ts";

/** Times of an answer stand as the question gave them; the engine counts in UTC. */
export const AS_GIVEN = "UTC";

const numbersOf = (rows: AskedAnswer["rows"], at: number): readonly number[] =>
  rows.flatMap((row) => (typeof row[at] === "number" ? [row[at] as number] : []));

/** Decimals for a column whose meaning nobody knows: none for whole numbers, else three figures of the largest. */
export function decimalsFor(values: readonly number[]): number {
  if (values.every(Number.isInteger)) return 0;
  const most = values.reduce((max, value) => Math.max(max, Math.abs(value)), 0);
  return most >= 100 ? 1 : most >= 10 ? 2 : most >= 1 ? 3 : 4;
}

const midnight = (value: number): boolean => value % 86_400_000 === 0;

function momentText(value: number): string {
  const time = new Date(value).toISOString().slice(11, 16);
  return `${printIsoDate(value, AS_GIVEN)} ${time}`;
}

/** One printer for each column, so that a column's numbers have the same decimals. */
export function cellPrinter(column: AskedColumn, rows: AskedAnswer["rows"], at: number): (value: AskedValue) => string {
  const { kind, name } = column;
  const numbers = numbersOf(rows, at);
  const decimals = decimalsFor(numbers);
  const isYear = /year/i.test(name) && decimals === 0;
  const days = kind === "date" || (kind === "instant" && numbers.every(midnight));
  return (value) => {
    if (value === null) return "";
    if (typeof value === "boolean") return value ? "yes" : "no";
    if (typeof value === "string") return value;
    if (days) return printIsoDate(value, AS_GIVEN);
    if (kind === "instant") return momentText(value);
    return isYear ? String(value) : printNumber(value, decimals);
  };
}

/** The first rows of an answer as a page lists them. */
export function askedTable({ columns, rows, more }: AskedAnswer): DataTable {
  const printers = columns.map((column, at) => cellPrinter(column, rows, at));
  const all = `${printNumber(rows.length, 0)} rows${more ? ", and the answer has more" : ""}`;
  return {
    columns: columns.map(({ name, kind }) => ({ label: name, numeric: kind === "number" })),
    rows: rows.slice(0, MOST_ROWS).map((row) => row.map((value, at) => printers[at]?.(value) ?? "")),
    ...(rows.length > MOST_ROWS || more ? { note: `The first ${Math.min(MOST_ROWS, rows.length)} of ${all}.` } : {}),
  };
}
