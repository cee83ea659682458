import type { TableDeclaration } from "./declarations.ts";
import { inFileOrder, joinRows } from "./joinRows.ts";
import { cutBetweenLoads, type LoadSpan } from "./kilnLoadSpans.ts";
import type { LogFile } from "./logFile.ts";
import { mergeFiles, withRows } from "./mergeFiles.ts";
import { overlapMerger } from "./mergeOverlaps.ts";
import { partsBetweenLoads } from "./partsBetweenLoads.ts";
import { ProblemLog } from "./problemLog.ts";
import { type FileContext, type FileRows, readTableFile } from "./readTableFile.ts";
import type { ColumnValues, Table } from "./table.ts";

/** What one file holds, as far as the order of reading needs it. */
interface FileSpan {
  readonly file: LogFile;
  /** Place among the files by path. */
  readonly place: number;
  /** First instant of each kiln in it. */
  readonly from: ReadonlyMap<string, number>;
}

/** Who hears what of a sweep. */
export interface SweepHands {
  /** What a file held, right after it was read. */
  readonly onFile: (path: string, found: FileRows | null) => void;
  /** How many rows of those that are settled have been put in order and handed over: 0 before a pause, all of them at its end. */
  readonly onOrdered: (rows: number, of: number) => void;
  /** Each part: the rows of one kiln, sorted, every instant once. */
  readonly take: (part: Table) => void;
}

/** The readings' files, looked over: their order in time, and what the columns of all of them are. */
export interface ReadingsOutline {
  readonly spans: readonly FileSpan[];
  readonly paths: readonly string[];
  readonly columns: ReadonlySet<string>;
  readonly writtenUnits: Table["writtenUnits"];
}

const textIn = (column: ColumnValues | undefined, row: number): string => String(column?.[row] ?? "");

/** Reads every file once to learn when it begins, and keeps nothing else of it. */
export async function outlineReadings(
  files: readonly LogFile[],
  declaration: TableDeclaration,
  context: FileContext,
): Promise<ReadingsOutline> {
  const spans: FileSpan[] = [];
  const columns = new Set<string>();
  const units = new Map<string, Set<string>>();
  for (const [place, file] of files.entries()) {
    // What is wrong with it is said when it is read for good.
    const found = await readTableFile(file, declaration, { ...context, log: new ProblemLog() });
    const from = new Map<string, number>();
    const at = found?.columns.get("at") ?? [];
    const kilns = found?.columns.get("kiln");
    for (let row = 0; row < (found?.rowCount ?? 0); row += 1) {
      const kiln = textIn(kilns, row);
      const instant = at[row] as number;
      if (!(instant >= (from.get(kiln) ?? Number.POSITIVE_INFINITY))) from.set(kiln, instant);
    }
    for (const name of found?.columns.keys() ?? []) columns.add(name);
    for (const [name, unit] of found?.units ?? []) units.set(name, (units.get(name) ?? new Set()).add(unit));
    spans.push({ file, place, from });
  }
  const first = ({ from }: FileSpan): number => Math.min(...from.values());
  return {
    spans: spans.sort((a, b) => (first(a) === first(b) ? a.place - b.place : first(a) - first(b))),
    paths: files.map(({ path }) => path),
    columns,
    writtenUnits: new Map([...units].map(([name, own]) => [name, [...own]])),
  };
}

/**
 * Reads the files in the order in which they begin and hands their rows over as soon as nothing can be added to them: a kiln's
 * rows up to the earliest instant of any file still to come, and no load cut in two. Held at any time are the rows of one file, and
 * of those before it that overlap it or belong to a load not yet over.
 *
 * @param rowsAPart rows that are put in order at a time, about
 */
export async function sweepReadings(
  { spans, paths, columns, writtenUnits }: ReadingsOutline,
  declaration: TableDeclaration,
  context: FileContext,
  loads: ReadonlyMap<string, readonly LoadSpan[]>,
  rowsAPart: number,
  { onFile, onOrdered, take }: SweepHands,
): Promise<void> {
  const merger = overlapMerger(context.log);
  const waiting = new Map<string, Table>();
  for (const [order, { file, place }] of spans.entries()) {
    const found = await readTableFile(file, declaration, context);
    onFile(file.path, found);
    onOrdered(0, found?.rowCount ?? 0);
    if (found !== null) {
      for (const [kiln, rows] of byKiln(asTable(found, place))) {
        const before = waiting.get(kiln);
        waiting.set(kiln, before ? joinRows(before, rows) : rows);
      }
    }
    const coming = spans.slice(order + 1);
    for (const [kiln, rows] of waiting) {
      const next = Math.min(
        Number.POSITIVE_INFINITY,
        ...coming.map(({ from }) => from.get(kiln) ?? Number.POSITIVE_INFINITY),
      );
      const own = loads.get(kiln) ?? [];
      const end = next === Number.POSITIVE_INFINITY ? next : cutBetweenLoads(own, next);
      const { rowCount, parts, rest } = partsBetweenLoads(rows, own, end, rowsAPart);
      if (rest.rowCount === 0) waiting.delete(kiln);
      else waiting.set(kiln, rest);
      let ordered = 0;
      onOrdered(ordered, rowCount);
      for (const part of parts) {
        take(merger.merge(inFileOrder(part)));
        ordered += part.rowCount;
        onOrdered(ordered, rowCount);
      }
    }
  }
  merger.end();

  function asTable(found: FileRows, file: number): Table {
    const own = mergeFiles(declaration, [found]);
    const whole = new Map(own.columns);
    for (const name of columns) if (!whole.has(name)) whole.set(name, new Float64Array(own.rowCount).fill(Number.NaN));
    const fileOfRow = new Uint16Array(own.rowCount).fill(file);
    return { ...own, columns: whole, writtenUnits, files: paths, fileOfRow };
  }
}

function byKiln(table: Table): ReadonlyMap<string, Table> {
  const kilns = table.columns.get("kiln");
  const first = textIn(kilns, 0);
  // A logger's file is mostly of one kiln, and then there is nothing to part.
  if (!(kilns instanceof Float64Array) && (kilns?.every((kiln) => (kiln ?? "") === first) ?? true)) {
    return new Map(table.rowCount === 0 ? [] : [[first, table]]);
  }
  const rows = new Map<string, number[]>();
  for (let row = 0; row < table.rowCount; row += 1) {
    const kiln = textIn(kilns, row);
    const own = rows.get(kiln);
    if (own) own.push(row);
    else rows.set(kiln, [row]);
  }
  return new Map([...rows].map(([kiln, own]) => [kiln, withRows(table, own)]));
}
