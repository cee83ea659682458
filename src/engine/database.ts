import type { AskedAnswer } from "../tables/askedAnswer.ts";
import type { CsvTable } from "../tables/csvTable.ts";
import type { AskOptions } from "./askReadOnly.ts";

export type { CsvTable, DuckType } from "../tables/csvTable.ts";

/**
 * The one door to DuckDB, in Node and in the browser alike.
 *
 * Rows come back as plain objects keyed by the SELECT list's names: numbers (BIGINT and DECIMAL cast to double,
 * TIMESTAMP as milliseconds since 1970 in UTC, DATE as milliseconds at UTC midnight), strings, booleans, arrays of
 * these, or null.
 */
export interface Database {
  query<Row extends object>(sql: string): Promise<readonly Row[]>;
  close(): Promise<void>;
}

/** A database that takes tables in: what `node.ts` and `browser.ts` open. */
export interface LoadableDatabase extends Database {
  /**
   * Puts tables in, replacing those of the same name.
   *
   * @throws {RangeError} when a table's name, columns or header line cannot be what {@link CsvTable} says
   */
  load(tables: readonly CsvTable[]): Promise<void>;
  /** Answers what a reader typed, and lets it change nothing (`askReadOnly.ts`). */
  ask(sql: string, options: AskOptions): Promise<AskedAnswer>;
}
