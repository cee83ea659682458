import { withRows } from "./mergeFiles.ts";
import type { ColumnValues, Table } from "./table.ts";

function joined(
  a: ColumnValues | undefined,
  b: ColumnValues | undefined,
  rows: readonly [number, number],
): ColumnValues {
  if (a instanceof Float64Array || b instanceof Float64Array) {
    const both = new Float64Array(rows[0] + rows[1]).fill(Number.NaN);
    if (a instanceof Float64Array) both.set(a);
    if (b instanceof Float64Array) both.set(b, rows[0]);
    return both;
  }
  // Row by row: measured, spreading or concatenating millions of texts takes seconds.
  const both = new Array<string | null>(rows[0] + rows[1]).fill(null);
  for (let row = 0; a !== undefined && row < rows[0]; row += 1) both[row] = a[row] ?? null;
  for (let row = 0; b !== undefined && row < rows[1]; row += 1) both[rows[0] + row] = b[row] ?? null;
  return both;
}

/** The rows of two tables of one kind that count their files by one list, the first's before the second's. Unknown columns are left out. */
export function joinRows(first: Table, second: Table): Table {
  if (first.rowCount === 0) return second;
  const names = new Set([...first.columns.keys(), ...second.columns.keys()]);
  const rows = [first.rowCount, second.rowCount] as const;
  const fileOfRow = new Uint16Array(rows[0] + rows[1]);
  fileOfRow.set(first.fileOfRow);
  fileOfRow.set(second.fileOfRow, rows[0]);
  const lineOfRow = new Int32Array(rows[0] + rows[1]);
  lineOfRow.set(first.lineOfRow);
  lineOfRow.set(second.lineOfRow, rows[0]);
  return {
    ...second,
    rowCount: rows[0] + rows[1],
    columns: new Map([...names].map((name) => [name, joined(first.columns.get(name), second.columns.get(name), rows)])),
    unknownColumns: new Map(),
    fileOfRow,
    lineOfRow,
  };
}

/** The rows as if the files had been read in the order of their list, each from its top. */
export function inFileOrder(table: Table): Table {
  const { fileOfRow, lineOfRow, rowCount } = table;
  const order = (a: number, b: number): number =>
    (fileOfRow[a] as number) - (fileOfRow[b] as number) || (lineOfRow[a] as number) - (lineOfRow[b] as number);
  // Nearly always so, and seconds to find out by sorting the millions of rows of a year.
  let ordered = 1;
  while (ordered < rowCount && order(ordered - 1, ordered) <= 0) ordered += 1;
  if (ordered >= rowCount) return table;
  return withRows(table, Uint32Array.from({ length: rowCount }, (_, row) => row).sort(order));
}
