import type { Table } from "../table.ts";

/** Numbers, instants, dates or flags of a column, NaN throughout where no file had it. */
export function numbersOf(table: Table, name: string): Float64Array {
  const values = table.columns.get(name);
  return values instanceof Float64Array ? values : new Float64Array(table.rowCount).fill(Number.NaN);
}

/** Texts of a column, null throughout where no file had it. */
export function textsOf(table: Table, name: string): readonly (string | null)[] {
  const values = table.columns.get(name);
  return values === undefined || values instanceof Float64Array
    ? new Array<string | null>(table.rowCount).fill(null)
    : values;
}

/** Row numbers by the text of a column, in order; rows without it are left out. */
export function rowsBy(table: Table | undefined, name: string): ReadonlyMap<string, readonly number[]> {
  const groups = new Map<string, number[]>();
  if (!table) return groups;
  for (const [row, text] of textsOf(table, name).entries()) {
    if (text === null) continue;
    const group = groups.get(text);
    if (group) group.push(row);
    else groups.set(text, [row]);
  }
  return groups;
}

/** `line 7`, with the file where the table has several. */
export function whereIs(table: Table, row: number): string {
  const line = `line ${table.lineOfRow[row]}`;
  return table.files.length > 1 ? `${line} of ${table.files[table.fileOfRow[row] as number]}` : line;
}

/** The sum over rows, or null where one of them has no value. */
export function sumOver(values: Float64Array, rows: readonly number[]): number | null {
  let sum = 0;
  for (const row of rows) sum += values[row] as number;
  return Number.isNaN(sum) || rows.length === 0 ? null : sum;
}
