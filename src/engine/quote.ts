/**
 * Text as an SQL string literal, safe whatever it holds: standard SQL knows no escape in a literal but the doubled
 * quote. DuckDB reads a zero byte as the end of the statement, so one is refused.
 *
 * @throws {RangeError} when the text holds a zero byte
 */
export function quoteText(text: string): string {
  if (text.includes("\0")) throw new RangeError("quoteText requires text without zero bytes");
  return `'${text.replaceAll("'", "''")}'`;
}

/**
 * A table's or column's name as an SQL identifier. Only names of our own making pass: lower-case letters, digits and
 * underscores.
 *
 * @throws {RangeError} on any other name
 */
export function quoteName(name: string): string {
  if (!/^[a-z][a-z0-9_]*$/.test(name)) throw new RangeError(`quoteName requires a plain lower-case name; got ${name}`);
  return `"${name}"`;
}

/**
 * An instant as an SQL TIMESTAMP in UTC, to the millisecond.
 *
 * @param instant milliseconds since 1970-01-01T00:00Z
 * @throws {RangeError} when it is not a finite number in the years 1 to 9999
 */
export function quoteInstant(instant: number): string {
  const text = Number.isFinite(instant) && Math.abs(instant) <= 8.64e15 ? new Date(instant).toISOString() : "";
  if (!/^\d{4}-/.test(text)) throw new RangeError(`quoteInstant requires milliseconds since 1970; got ${instant}`);
  return `TIMESTAMP '${text.replace("T", " ").replace("Z", "")}'`;
}
