import type { AskedAnswer, AskedValue } from "./askedAnswer.ts";
import type { Column, TableName } from "./declarations.ts";
import { guardedText } from "./guardedCsv.ts";
import { insideName } from "./insideName.ts";
import type { ColumnValues, Table } from "./table.ts";
import { declarationOf } from "./tableDeclarations.ts";

const numberOf = (value: AskedValue): number => (value === null ? Number.NaN : Number(value));

function valuesOf(column: Column, rows: AskedAnswer["rows"], at: number): ColumnValues {
  const { kind } = column;
  if (kind === "id" || kind === "text" || kind === "choice") {
    return rows.map((row) => (row[at] === null ? null : guardedText(String(row[at]))));
  }
  return Float64Array.from(rows, (row) => numberOf(row[at] ?? null));
}

/**
 * A log table out of the engine again, as `logText` takes it. Texts that a spreadsheet would run as a formula are guarded,
 * since the file that is made of it will be opened in one. Columns without a value are left out.
 *
 * @param answer to a question for the table's columns by their inside names
 */
export function tableOfAnswer(name: TableName, { columns, rows }: AskedAnswer): Table {
  const held = declarationOf(name).columns.flatMap((column) => {
    const at = columns.findIndex((one) => one.name === insideName(column));
    const isBlank = at < 0 || (column.needed !== true && rows.every((row) => row[at] === null));
    return isBlank ? [] : [[insideName(column), valuesOf(column, rows, at)] as const];
  });
  return {
    name,
    rowCount: rows.length,
    columns: new Map(held),
    writtenUnits: new Map(),
    unknownColumns: new Map(),
    files: [],
    fileOfRow: new Uint16Array(rows.length),
    lineOfRow: new Int32Array(rows.length),
  };
}
