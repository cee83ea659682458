import type { TableName } from "./declarations.ts";
import { decoded, UndecodableText } from "./decode.ts";
import { isLitter, unknownFileHint } from "./fileOf.ts";
import { type ForeignMatch, MATCH_FILE } from "./foreign/foreignMatch.ts";
import { readMatches } from "./foreign/readMatches.ts";
import { idleMatches, tableOf, withMatches } from "./foreign/withMatches.ts";
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
  /** By path, without what an operating system leaves behind; one that several matches are for stands there for each. */
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
  const found = await collected(given);
  const house = await houseOf(
    found.find(({ path }) => path === "house.toml"),
    log,
  );
  noteMissingDeclared(house, found, log);
  const logFiles = found.filter(({ path }) => !isSettings(path));
  const matches = await matchesOf(
    found.find(({ path }) => path === MATCH_FILE),
    log,
  );
  for (const problem of idleMatches(logFiles, matches)) log.add(problem);
  const files = withMatches(logFiles, matches);
  const context: FileContext = { house, localTime: localTimeOf(house.timeZone), log };
  /** Rows that each file's reader kept, and how many it had set aside by then. */
  const kept = new Map<string, { readonly rows: number; readonly aside: number }>();
  const count = (path: string, found: FileRows | null): void => {
    const before = kept.get(path)?.rows ?? 0;
    kept.set(path, { rows: before + (found?.rowCount ?? 0), aside: log.countsOf(path).rowsSetAside });
  };
  const tables = new Map<TableName, Table>();
  for (const declaration of tableDeclarations) {
    if (declaration.name === leaveOut) continue;
    const read: FileRows[] = [];
    for (const file of files) {
      if (tableOf(file) !== declaration.name) continue;
      const rows = await readTableFile(file, declaration, context);
      if (rows) read.push(rows);
      count(file.path, rows);
    }
    if (read.length === 0) continue;
    const merged = mergeFiles(declaration, read);
    tables.set(declaration.name, declaration.place.endsWith("/") ? mergeOverlaps(merged, log) : merged);
  }
  for (const file of files) if (tableOf(file) === null) noteUnknown(file.path, log);
  const tableByPath = new Map(files.map((file) => [file.path, tableOf(file)]));
  const filesRead = (): readonly LogFileRead[] =>
    found.map(({ path }) => {
      const counts = log.countsOf(path);
      const { rows, aside } = kept.get(path) ?? { rows: 0, aside: 0 };
      return { path, table: tableByPath.get(path) ?? null, rows: rows - (counts.rowsSetAside - aside), ...counts };
    });
  return { house, tables, context, files, count, filesRead };
}

async function textOf(file: LogFile): Promise<string> {
  let text = "";
  for await (const piece of decoded(file.chunks(), null)) text += piece;
  return text;
}

const isSettings = (path: string): boolean => path === "house.toml" || path === MATCH_FILE;

/** The text of a file of settings: null where there is none, empty where it cannot be read. */
async function settingsText(file: LogFile | undefined, log: ProblemLog): Promise<string | null> {
  if (!file) return null;
  try {
    return await textOf(file);
  } catch (error) {
    if (!(error instanceof UndecodableText)) throw error;
    const { rule, message, hint } = error.fault;
    log.add({
      file: file.path,
      line: error.line,
      column: null,
      value: null,
      rule,
      message,
      hint,
      effect: "file-set-aside",
      run: null,
    });
    return "";
  }
}

async function houseOf(file: LogFile | undefined, log: ProblemLog): Promise<House> {
  const { house, problems } = readHouse(await settingsText(file, log));
  for (const problem of problems) log.add(problem);
  return house;
}

async function matchesOf(file: LogFile | undefined, log: ProblemLog): Promise<readonly ForeignMatch[]> {
  const { matches, problems } = readMatches((await settingsText(file, log)) ?? "");
  for (const problem of problems) log.add(problem);
  return matches;
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
