import type { TableName } from "../tables/declarations.ts";
import type { Table } from "../tables/table.ts";
import type { OtherColumn } from "./report.ts";

/** What the logs hold beyond the format, run by run, for the runs' own pages; rows that name no run are not shown there. */
export function otherColumns(tables: ReadonlyMap<TableName, Table>): readonly OtherColumn[] {
  const found: OtherColumn[] = [];
  for (const { name, columns, unknownColumns, rowCount } of tables.values()) {
    const runs = columns.get("run");
    if (runs === undefined || runs instanceof Float64Array) continue;
    for (const [column, values] of unknownColumns) {
      for (let row = 0; row < rowCount; row += 1) {
        const run = runs[row];
        const value = values[row];
        if (run && value) found.push({ run, table: name, column, value });
      }
    }
  }
  return found;
}
