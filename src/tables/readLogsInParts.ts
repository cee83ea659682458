import { applyRules } from "./applyRules.ts";
import { beginLogs } from "./beginLogs.ts";
import type { TableName } from "./declarations.ts";
import { tableOf } from "./foreign/withMatches.ts";
import { kilnLoadSpans } from "./kilnLoadSpans.ts";
import type { LogFile } from "./logFile.ts";
import { withRows } from "./mergeFiles.ts";
import { outlineReadings, sweepReadings } from "./readingsSweep.ts";
import type { Logs, ReadOptions } from "./readLogs.ts";
import { datesAhead } from "./rules/datesAhead.ts";
import { readingsGap } from "./rules/readingsGap.ts";
import { readingsJump } from "./rules/readingsJump.ts";
import { readingsStandStill } from "./rules/readingsStandStill.ts";
import { unknownKilns } from "./rules/unknownKilns.ts";
import type { Table } from "./table.ts";
import { declarationOf } from "./tableDeclarations.ts";

/** Rows of readings that are put in order at a time: well under a second's work, and few enough calls not to be felt. */
const ROWS_A_PART = 200_000;

export interface PartsOptions extends ReadOptions {
  /** Hears how many rows of readings, of those that no later file can add to, have been put in order and handed over. */
  readonly onOrdered?: (rows: number, of: number) => void;
  /** Rows that are put in order at a time, about; a load of more stays whole. */
  readonly rowsAPart?: number;
}

/** Logs whose readings are still to be read. */
export interface LogsInParts extends Pick<Logs, "house" | "tables"> {
  /**
   * Reads the readings, a part after the other; to be called once.
   *
   * @param take gets each part: rows of one kiln in time order, checked and every instant once. No load, as kilning.csv has it, lies
   * in two parts. What is not kept of a part is gone.
   */
  readReadings(take: (part: Table) => void): Promise<Pick<Logs, "problems" | "files">>;
}

/**
 * Reads a house's logs as `readLogs` does, but for readings/, which are handed over in parts so that years of them need the memory
 * of one file, and of what overlaps it. Every file of readings is read twice: once to learn when it begins.
 *
 * @param files as for `readLogs`; the pieces of a file of readings are asked for twice
 */
export async function readLogsInParts(
  files: AsyncIterable<LogFile> | Iterable<LogFile>,
  options: PartsOptions = {},
): Promise<LogsInParts> {
  const { house, tables, context, files: all, count, filesRead } = await beginLogs(files, "readings");
  const { log } = context;
  const now = options.now ?? null;
  applyRules(tables, house, now, log);
  const kilning = tables.get("kilning");
  return {
    house,
    tables,
    async readReadings(take) {
      const declaration = declarationOf("readings");
      const own = all.filter((file) => tableOf(file) === "readings");
      const outline = await outlineReadings(own, declaration, context);
      const named = new Set<string>();
      const check = (part: Table): void => {
        const kiln = String(part.columns.get("kiln")?.[0] ?? "");
        if (!named.has(kiln)) applyRules(only(withRows(part, [0])), house, now, log, [unknownKilns]);
        named.add(kiln);
        const beside = only(part);
        if (kilning) beside.set("kilning", kilning);
        applyRules(beside, house, now, log, [readingsStandStill, readingsJump, readingsGap]);
        applyRules(only(part), house, now, log, [datesAhead]);
        take(part);
      };
      const { rowsAPart = ROWS_A_PART, onOrdered = () => {} } = options;
      await sweepReadings(outline, declaration, context, kilnLoadSpans(kilning), rowsAPart, {
        onFile: count,
        onOrdered,
        take: check,
      });
      return { problems: log.list(), files: filesRead() };
    },
  };
}

const only = (readings: Table): Map<TableName, Table> => new Map([["readings", readings]]);
