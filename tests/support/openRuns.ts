import type { LoadableDatabase } from "../../src/engine/database.ts";
import { joinLogs } from "../../src/engine/joinLogs.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { publishedTables } from "../../src/report/publishTables.ts";
import { type Logs, readLogs } from "../../src/tables/readLogs.ts";
import { textFiles } from "./textFiles.ts";

export interface OpenedRuns {
  readonly database: LoadableDatabase;
  readonly logs: Logs;
}

/** Reads logs given as text (path to content) and opens an engine with them in it, joined, as the build does. */
export async function openRuns(files: Readonly<Record<string, string>>): Promise<OpenedRuns> {
  const logs = await readLogs(textFiles(files));
  const database = await openNodeDatabase(publishedTables(logs.tables));
  await joinLogs(database);
  return { database, logs };
}

/** A header and its rows with only the columns named; everything else of that table is blank. */
export function csv(columns: readonly string[], ...rows: readonly (readonly (string | number)[])[]): string {
  return `${[columns, ...rows].map((row) => row.join(",")).join("\n")}\n`;
}
