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
  const database = await openNodeDatabase([]);
  return { database, logs: await joinInto(database, files) };
}

/** The same in an engine that is open already, in place of what it held: starting one takes most of a second. */
export async function joinInto(database: LoadableDatabase, files: Readonly<Record<string, string>>): Promise<Logs> {
  const logs = await readLogs(textFiles(files));
  await database.load(publishedTables(logs.tables));
  await database.query("DROP TABLE IF EXISTS load_readings");
  await joinLogs(database);
  return logs;
}

/** A header and its rows with only the columns named; everything else of that table is blank. */
export function csv(columns: readonly string[], ...rows: readonly (readonly (string | number)[])[]): string {
  return `${[columns, ...rows].map((row) => row.join(",")).join("\n")}\n`;
}
