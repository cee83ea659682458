import type { TableDeclaration } from "./declarations.ts";
import { insideName } from "./insideName.ts";
import type { FileRows } from "./readTableFile.ts";
import { picked } from "./rowStore.ts";
import type { ColumnValues, Table } from "./table.ts";

function joined(files: readonly FileRows[], name: string, total: number): ColumnValues {
  const first = files.find(({ columns }) => columns.has(name))?.columns.get(name);
  if (files.length === 1 && first) return first;
  if (first instanceof Float64Array) {
    const all = new Float64Array(total).fill(Number.NaN);
    let at = 0;
    for (const { columns, rowCount } of files) {
      const own = columns.get(name);
      if (own instanceof Float64Array) all.set(own, at);
      at += rowCount;
    }
    return all;
  }
  const all: (string | null)[] = new Array(total).fill(null);
  let at = 0;
  for (const { columns, rowCount } of files) {
    const own = columns.get(name);
    if (own) for (let row = 0; row < rowCount; row++) all[at + row] = own[row] as string | null;
    at += rowCount;
  }
  return all;
}

/** Puts the files of one table together, in the order given, row after row. */
export function mergeFiles(declaration: TableDeclaration, files: readonly FileRows[]): Table {
  const rowCount = files.reduce((sum, file) => sum + file.rowCount, 0);
  const columns = new Map<string, ColumnValues>();
  const writtenUnits = new Map<string, readonly string[]>();
  for (const column of declaration.columns) {
    const name = insideName(column);
    if (files.some((file) => file.columns.has(name))) columns.set(name, joined(files, name, rowCount));
    const units = new Set(files.flatMap((file) => file.units.get(name) ?? []));
    if (units.size > 0) writtenUnits.set(name, [...units]);
  }
  const unknownColumns = new Map<string, readonly (string | null)[]>();
  for (const heading of new Set(files.flatMap(({ unknown }) => [...unknown.keys()]))) {
    unknownColumns.set(
      heading,
      files.flatMap(({ unknown, rowCount: rows }) => unknown.get(heading) ?? new Array<string | null>(rows).fill(null)),
    );
  }
  const fileOfRow = new Uint16Array(rowCount);
  const lineOfRow = new Int32Array(rowCount);
  let at = 0;
  files.forEach((file, index) => {
    fileOfRow.fill(index, at, at + file.rowCount);
    lineOfRow.set(file.lines, at);
    at += file.rowCount;
  });
  return {
    name: declaration.name,
    rowCount,
    columns,
    writtenUnits,
    unknownColumns,
    files: files.map(({ path }) => path),
    fileOfRow,
    lineOfRow,
  };
}

/** The same table with only `rows`, in that order. */
export function withRows(table: Table, rows: ArrayLike<number>): Table {
  return {
    ...table,
    rowCount: rows.length,
    columns: new Map([...table.columns].map(([name, values]) => [name, picked(values, rows)])),
    unknownColumns: new Map(
      [...table.unknownColumns].map(([name, values]) => [name, picked(values, rows) as (string | null)[]]),
    ),
    fileOfRow: Uint16Array.from(rows, (row) => table.fileOfRow[row] as number),
    lineOfRow: Int32Array.from(rows, (row) => table.lineOfRow[row] as number),
  };
}
