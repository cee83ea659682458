import { applyRules } from "./applyRules.ts";
import { beginLogs, type LogFileRead } from "./beginLogs.ts";
import type { TableName } from "./declarations.ts";
import type { House } from "./house.ts";
import type { LogFile } from "./logFile.ts";
import type { Problem } from "./problem.ts";
import type { Table } from "./table.ts";

export interface Logs {
  readonly house: House;
  /** A table is there when at least one file of it could be read, if only its headings. */
  readonly tables: ReadonlyMap<TableName, Table>;
  /** All of them, by file and line. */
  readonly problems: readonly Problem[];
  /** By path. */
  readonly files: readonly LogFileRead[];
}

export interface ReadOptions {
  /** The present in milliseconds, where the caller has a clock: dates still to come are then noted. */
  readonly now?: number;
}

/**
 * Reads a house's logs whole: settings, every table typed and checked in SI and UTC, and every fault as a Problem.
 * Nothing a file holds makes it throw; no row is lost without a Problem that names its line.
 *
 * Years of readings need the memory of years: `readLogsInParts` hands them over bit by bit.
 *
 * @param files the files of the logs folder, in any order; each is read once, in pieces
 */
export async function readLogs(
  files: AsyncIterable<LogFile> | Iterable<LogFile>,
  options: ReadOptions = {},
): Promise<Logs> {
  const { house, tables, context, filesRead } = await beginLogs(files);
  applyRules(tables, house, options.now ?? null, context.log);
  return { house, tables, problems: context.log.list(), files: filesRead() };
}
