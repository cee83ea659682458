import { instantAt } from "./clock.ts";
import { LAST_DATE, LAST_HOUR } from "./truths.ts";

/** One row of a log file: text as it will stand there; what is missing or empty is not recorded. */
export type Row = Record<string, string>;

/** The moment at which the invented logs end; nothing later has happened yet. */
export const LOGS_END = instantAt(LAST_DATE, Math.floor(LAST_HOUR), Math.round((LAST_HOUR % 1) * 60));

/** A number as a person writes it: so many decimals, and no trailing zeros after a whole number of kilograms. */
export function numberText(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return decimals > 0 && /\.0+$/.test(text) && decimals !== 1 ? text.replace(/\.0+$/, "") : text;
}

const quoted = (cell: string): string => (/[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** Rows as CSV, columns in this order. */
export function csvText(columns: readonly string[], rows: readonly Row[]): string {
  const lines = [columns.join(",")];
  for (const row of rows) {
    for (const name of Object.keys(row)) {
      if (!columns.includes(name)) throw new Error(`a row has the column ${name}, the file does not`);
    }
    lines.push(columns.map((name) => quoted(row[name] ?? "")).join(","));
  }
  return `${lines.join("\n")}\n`;
}
