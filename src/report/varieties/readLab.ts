import type { Database } from "../../engine/database.ts";
import { publishedColumns } from "../publishTables.ts";
import type { LabRow } from "../varietiesResult.ts";

/** Who made the test, and of what; all other columns are results. */
const about = ["run", "tested_on", "laboratory", "method_set"];

/** Columns of lab.csv that hold a result, as they are named inside. */
export const labMeasures: readonly string[] = (publishedColumns.lab ?? []).filter((column) => !about.includes(column));

type Row = Readonly<Record<string, number | string | null>>;

/** Every certificate, by date, then run. */
export async function readLab(database: Database): Promise<readonly LabRow[]> {
  const results = labMeasures.map((measure) => `${measure} AS "${measure}"`).join(", ");
  const rows = await database.query<Row & Pick<LabRow, "run" | "testedOn" | "laboratory" | "methodSet">>(
    `SELECT run, tested_on AS "testedOn", laboratory, method_set AS "methodSet", ${results}
    FROM lab ORDER BY tested_on, run, laboratory, method_set, rowid`,
  );
  return rows.map((row) => ({
    run: row.run,
    testedOn: row.testedOn,
    laboratory: row.laboratory,
    methodSet: row.methodSet,
    values: Object.fromEntries(labMeasures.map((measure) => [measure, row[measure] as number | null])),
  }));
}
