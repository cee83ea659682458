import type { TableName } from "../../tables/declarations.ts";
import { templatePath } from "../../tables/describeFormat.ts";
import { insideName } from "../../tables/insideName.ts";
import { declarationOf } from "../../tables/tableDeclarations.ts";
import { publishedColumns } from "../publishTables.ts";
import { writtenName } from "./askSchema.ts";

/** A log that can be taken away as a file: where it goes in a logs folder, and the question that fetches its rows. */
export interface TakenLog {
  readonly name: TableName;
  readonly path: string;
  readonly sql: string;
}

/** Every log that the site holds, in the order of the format. Readings go out load by load and are no table. */
export const takenLogs: readonly TakenLog[] = (Object.keys(publishedColumns) as TableName[]).map((name) => {
  const declaration = declarationOf(name);
  const published = publishedColumns[name] ?? [];
  const columns = declaration.columns.map(insideName).filter((column) => published.includes(column));
  const order = name === "weather" ? '"at"' : "source_file, source_line";
  const table = writtenName(name.replaceAll("-", "_"));
  return {
    name,
    path: templatePath(declaration),
    sql: `SELECT ${columns.map(writtenName).join(", ")} FROM ${table} ORDER BY ${order}`,
  };
});

/** Batches as one row each, every stage joined. */
export const takenRuns = "SELECT * EXCLUDE (sorted_at) FROM run_rows ORDER BY sorted_at, run";
