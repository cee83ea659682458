/** A table on its way into the engine: the only form in which rows enter. */
export interface CsvTable {
  readonly name: string;
  /** Column name to DuckDB type, in the order of the CSV's columns. */
  readonly columns: Readonly<Record<string, DuckType>>;
  /** UTF-8, comma, a header line, RFC 4180 quoting; empty field for null; timestamps `YYYY-MM-DD HH:MM:SS[.mmm]` in UTC. */
  readonly csv: Uint8Array;
}

export type DuckType = "VARCHAR" | "DOUBLE" | "TIMESTAMP" | "DATE" | "BOOLEAN" | "INTEGER";
