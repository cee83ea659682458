/** A plain number, and so no formula: minus signs, decimal points and powers of ten are its own. */
const PLAIN_NUMBER = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i;

/**
 * What a spreadsheet takes for the beginning of a formula, and a tab or line's end before one (OWASP ASVS 5.0, 1.2.10;
 * CWE-1236).
 */
const BEGINS_FORMULA = /^[=+\-@\t\r\n\0]/;

/** Text that a spreadsheet may open without harm: an apostrophe goes before what would be taken for a formula. */
export const guardedText = (value: string): string =>
  BEGINS_FORMULA.test(value) && !PLAIN_NUMBER.test(value) ? `'${value}` : value;

/** A guarded value as a field of CSV. */
export function guardedCell(value: string): string {
  const guarded = guardedText(value);
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/**
 * Rows as CSV for a person to open in a spreadsheet: comma, RFC 4180 quoting, no cell that would run as a formula.
 *
 * @param rows headings first; null is an empty cell
 */
export function guardedCsv(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows.map((row) => `${row.map((cell) => guardedCell(String(cell ?? ""))).join(",")}\r\n`).join("");
}
