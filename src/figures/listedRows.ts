import type { DataCell, DataTable } from "./figureSpec.ts";

/** A page lists no more rows than this under a figure. */
export const MOST_ROWS = 200;

const plural = (noun: string): string => `${noun}${noun.endsWith("ch") ? "es" : "s"}`;

/** `1 load`, `7 loads`, `7 batches`. */
export const countOf = (n: number, noun: string): string => `${n} ${n === 1 ? noun : plural(noun)}`;

/**
 * The table under a figure from rows in time order: latest first, the latest 200 where there are more, and then a note
 * that says so. Its rows are put into words when they are first read: many a table is never shown.
 */
export function latestFirst<T>(
  rows: readonly T[],
  noun: string,
  columns: DataTable["columns"],
  cells: (row: T) => readonly DataCell[],
): DataTable {
  let listed: DataTable["rows"] | null = null;
  const table = {
    columns,
    get rows(): DataTable["rows"] {
      listed ??= rows.slice(-MOST_ROWS).reverse().map(cells);
      return listed;
    },
  };
  if (rows.length <= MOST_ROWS) return table;
  return {
    columns,
    note: `The latest ${MOST_ROWS} of ${countOf(rows.length, noun)}.`,
    get rows() {
      return table.rows;
    },
    get every() {
      return rows.toReversed().map(cells);
    },
  };
}
