import type { TableName } from "../tables/declarations.ts";
import type { Table } from "../tables/table.ts";
import type { OtherColumn } from "./report.ts";

/** The logs of the work itself. An own column beside a delivery may well be a price, which has no place on a run's page. */
const STAGES: readonly TableName[] = ["steeping", "germination", "kilning"];

/** What the stages' logs hold beyond the format, run by run, for the runs' own pages. */
export function otherColumns(tables: ReadonlyMap<TableName, Table>): readonly OtherColumn[] {
  const found: OtherColumn[] = [];
  for (const name of STAGES) {
    const table = tables.get(name);
    const runs = table?.columns.get("run");
    if (table === undefined || runs === undefined || runs instanceof Float64Array) continue;
    const { unknownColumns, rowCount } = table;
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
