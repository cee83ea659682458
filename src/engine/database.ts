/**
 * The one door to DuckDB, in Node and in the browser alike.
 *
 * Rows come back as plain objects keyed by the SELECT list's names: numbers (BIGINT and DECIMAL cast to double,
 * TIMESTAMP as milliseconds since 1970 in UTC, DATE as milliseconds at UTC midnight), strings, booleans, or null.
 */
export interface Database {
  query<Row extends object>(sql: string): Promise<readonly Row[]>;
  close(): Promise<void>;
}

/** A table on its way into the engine: the only form in which rows enter. */
export interface CsvTable {
  readonly name: string;
  /** Column name to DuckDB type, in the order of the CSV's columns. */
  readonly columns: Readonly<Record<string, DuckType>>;
  /** UTF-8, comma, a header line, RFC 4180 quoting; empty field for null; timestamps `YYYY-MM-DD HH:MM:SS[.mmm]` in UTC. */
  readonly csv: Uint8Array;
}

export type DuckType = "VARCHAR" | "DOUBLE" | "TIMESTAMP" | "DATE" | "BOOLEAN" | "INTEGER";
