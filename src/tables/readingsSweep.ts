import type { TableDeclaration } from "./declarations.ts";
import { inFileOrder, joinRows } from "./joinRows.ts";
import { cutBetweenLoads, type LoadSpan } from "./kilnLoadSpans.ts";
import type { LogFile } from "./logFile.ts";
import { mergeFiles, withRows } from "./mergeFiles.ts";
import { overlapMerger } from "./mergeOverlaps.ts";
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
 * @param take each part: the rows of one kiln, sorted, every instant once
 */
export async function sweepReadings(
  { spans, paths, columns, writtenUnits }: ReadingsOutline,
  declaration: TableDeclaration,
  context: FileContext,
  loads: ReadonlyMap<string, readonly LoadSpan[]>,
  onFile: (path: string, found: FileRows | null) => void,
  take: (part: Table) => void,
): Promise<void> {
  const merger = overlapMerger(context.log);
  const waiting = new Map<string, Table>();
  for (const [order, { file, place }] of spans.entries()) {
    const found = await readTableFile(file, declaration, context);
    onFile(file.path, found);
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
      const cut = next === Number.POSITIVE_INFINITY ? next : cutBetweenLoads(loads.get(kiln) ?? [], next);
      const [settled, rest] = partedAt(rows, cut);
      if (rest.rowCount === 0) waiting.delete(kiln);
      else waiting.set(kiln, rest);
      if (settled.rowCount > 0) take(merger.merge(inFileOrder(settled)));
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
  const rows = new Map<string, number[]>();
  for (let row = 0; row < table.rowCount; row += 1) {
    const kiln = textIn(kilns, row);
    const own = rows.get(kiln);
    if (own) own.push(row);
    else rows.set(kiln, [row]);
  }
  return new Map([...rows].map(([kiln, own]) => [kiln, own.length === table.rowCount ? table : withRows(table, own)]));
}

function partedAt(table: Table, cut: number): readonly [Table, Table] {
  if (cut === Number.POSITIVE_INFINITY) return [table, withRows(table, [])];
  const at = table.columns.get("at") as Float64Array;
  const [before, after]: [number[], number[]] = [[], []];
  for (let row = 0; row < table.rowCount; row += 1) ((at[row] as number) < cut ? before : after).push(row);
  return [withRows(table, before), withRows(table, after)];
}
