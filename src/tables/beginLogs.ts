import type { TableName } from "./declarations.ts";
import { decoded, UndecodableText } from "./decode.ts";
import { isLitter, tableOfFile, unknownFileHint } from "./fileOf.ts";
import type { House } from "./house.ts";
import { localTimeOf } from "./localTime.ts";
import type { LogFile } from "./logFile.ts";
import { mergeFiles } from "./mergeFiles.ts";
import { mergeOverlaps } from "./mergeOverlaps.ts";
import { ProblemLog } from "./problemLog.ts";
import { readHouse } from "./readHouse.ts";
import { type FileContext, type FileRows, readTableFile } from "./readTableFile.ts";
import type { Table } from "./table.ts";
import { tableDeclarations } from "./tableDeclarations.ts";

/** What became of one file. */
export interface LogFileRead {
  readonly path: string;
  readonly table: TableName | null;
  /** Rows read, those among them that only repeat another included. */
  readonly rows: number;
  readonly rowsSetAside: number;
  readonly valuesBlanked: number;
  readonly notes: number;
}

/** Logs with their settings and tables read and no cross-row rule applied yet. */
export interface BegunLogs {
  readonly house: House;
  readonly tables: Map<TableName, Table>;
  readonly context: FileContext;
  /** By path, without what an operating system leaves behind. */
  readonly files: readonly LogFile[];
  /** Keeps count of what a file's reader kept: to be called right after it was read. */
  count(path: string, found: FileRows | null): void;
  /** What became of every file: to be asked last. */
  filesRead(): readonly LogFileRead[];
}

/**
 * Reads settings and tables of a logs folder, each file once.
 *
 * @param leaveOut a table whose files are left to the caller
 */
export async function beginLogs(
  given: AsyncIterable<LogFile> | Iterable<LogFile>,
  leaveOut: TableName | null = null,
): Promise<BegunLogs> {
  const log = new ProblemLog();
  const files = await collected(given);
  const house = await houseOf(
    files.find(({ path }) => path === "house.toml"),
    log,
  );
  noteMissingDeclared(house, files, log);
  const context: FileContext = { house, localTime: localTimeOf(house.timeZone), log };
  /** Rows that each file's reader kept, and how many it had set aside by then. */
  const kept = new Map<string, { readonly rows: number; readonly aside: number }>();
  const count = (path: string, found: FileRows | null): void => {
    kept.set(path, { rows: found?.rowCount ?? 0, aside: log.countsOf(path).rowsSetAside });
  };
  const tables = new Map<TableName, Table>();
  for (const declaration of tableDeclarations) {
    if (declaration.name === leaveOut) continue;
    const read: FileRows[] = [];
    for (const file of files) {
      if (tableOfFile(file.path) !== declaration.name) continue;
      const found = await readTableFile(file, declaration, context);
      if (found) read.push(found);
      count(file.path, found);
    }
    if (read.length === 0) continue;
    const merged = mergeFiles(declaration, read);
    tables.set(declaration.name, declaration.place.endsWith("/") ? mergeOverlaps(merged, log) : merged);
  }
  for (const { path } of files) if (path !== "house.toml" && tableOfFile(path) === null) noteUnknown(path, log);
  const filesRead = (): readonly LogFileRead[] =>
    files.map(({ path }) => {
      const counts = log.countsOf(path);
      const { rows, aside } = kept.get(path) ?? { rows: 0, aside: 0 };
      return { path, table: tableOfFile(path), rows: rows - (counts.rowsSetAside - aside), ...counts };
    });
  return { house, tables, context, files, count, filesRead };
}

async function textOf(file: LogFile): Promise<string> {
  let text = "";
  for await (const piece of decoded(file.chunks(), null)) text += piece;
  return text;
}

async function houseOf(file: LogFile | undefined, log: ProblemLog): Promise<House> {
  let source: string | null = null;
  try {
    if (file) source = await textOf(file);
  } catch (error) {
    if (!(error instanceof UndecodableText)) throw error;
    const { rule, message, hint } = error.fault;
    log.add({
      file: "house.toml",
      line: error.line,
      column: null,
      value: null,
      rule,
      message,
      hint,
      effect: "file-set-aside",
      run: null,
    });
    source = "";
  }
  const { house, problems } = readHouse(source);
  for (const problem of problems) log.add(problem);
  return house;
}

async function collected(files: AsyncIterable<LogFile> | Iterable<LogFile>): Promise<readonly LogFile[]> {
  const all: LogFile[] = [];
  for await (const file of files) if (!isLitter(file.path)) all.push(file);
  return all.sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
}

function noteUnknown(path: string, log: ProblemLog): void {
  log.add({
    file: path,
    line: null,
    column: null,
    value: null,
    rule: "unknown-file",
    message: "The log format has no file of this name; it was not read.",
    hint: unknownFileHint(path),
    effect: "note",
    run: null,
  });
}

/** A name misspelt under [files] would otherwise leave its file read by other rules than the house meant. */
function noteMissingDeclared(house: House, all: readonly LogFile[], log: ProblemLog): void {
  for (const declared of house.files.keys()) {
    if (all.some(({ path }) => path === declared || (declared.endsWith("/") && path.startsWith(declared)))) continue;
    log.add({
      file: "house.toml",
      line: null,
      column: `files.${declared}`,
      value: null,
      rule: "declared-file-missing",
      message: `house.toml says how ${declared} is written, and there is no such file.`,
      hint: "Check the spelling: a file by its path in this folder, a folder with a slash at its end.",
      effect: "note",
      run: null,
    });
  }
}
