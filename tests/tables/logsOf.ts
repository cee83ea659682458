import type { LogFile } from "../../src/tables/logFile.ts";
import type { Problem } from "../../src/tables/problem.ts";
import { type Logs, readLogs } from "../../src/tables/readLogs.ts";

export type FileTexts = Readonly<Record<string, string | Uint8Array>>;

/** A logs folder in memory, handed out in pieces of `bytesAPiece`. */
export function folderOf(files: FileTexts, bytesAPiece = 1 << 16): readonly LogFile[] {
  return Object.entries(files).map(([path, content]) => ({
    path,
    async *chunks() {
      const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
      for (let at = 0; at < bytes.length; at += bytesAPiece) yield bytes.subarray(at, at + bytesAPiece);
    },
  }));
}

/** Reads a folder in memory; a house.toml that says nothing stands in where the test does not care. */
export function logsOf(files: FileTexts, options: { now?: number } = {}): Promise<Logs> {
  return readLogs(folderOf({ "house.toml": "", ...files }), options);
}

/** The problems of one rule. */
export async function problemsOf(
  rule: string,
  files: FileTexts,
  options: { now?: number } = {},
): Promise<readonly Problem[]> {
  return (await logsOf(files, options)).problems.filter((problem) => problem.rule === rule);
}

/** A column as plain values, NaN as null. */
export function valuesOf(
  logs: Logs,
  table: Parameters<Logs["tables"]["get"]>[0],
  column: string,
): readonly (string | number | null)[] {
  const values: Iterable<string | number | null> = logs.tables.get(table)?.columns.get(column) ?? [];
  return Array.from(values, (value) => (Number.isNaN(value) ? null : value));
}
