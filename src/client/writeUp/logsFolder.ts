import type { House } from "../../tables/house.ts";
import type { LogFile } from "../../tables/logFile.ts";
import { readHouse } from "../../tables/readHouse.ts";
import { readLogs } from "../../tables/readLogs.ts";
import { appendRow, headingsOf, stageCsv } from "../../tables/writeUp/appendRow.ts";
import type { StageDraft } from "../../tables/writeUp/draft.ts";
import { textFile } from "../../tables/writeUp/textFile.ts";
import { type WriteUpTable, writeUpTables } from "../../tables/writeUp/writeUpStages.ts";

/** As much of the File System Access API as is used; not every browser has it. */
interface FolderPicker {
  showDirectoryPicker(options: { readonly mode: "readwrite"; readonly id: string }): Promise<FileSystemDirectoryHandle>;
}

const hasPicker = (scope: object): scope is FolderPicker => "showDirectoryPicker" in scope;

function picker(): FolderPicker | null {
  const scope: object = globalThis;
  return hasPicker(scope) ? scope : null;
}

export const opensFolders = (): boolean => picker() !== null;

/**
 * Takes a row that was added out of its file again, so that it is as it was, or not there where it was made for the row.
 *
 * @throws {Error} with a sentence where the file is no longer byte for byte what was written; nothing is done then
 */
export type TakeOut = () => Promise<void>;

/** A house's logs folder on disk, which rows can be added to. */
export interface LogsFolder {
  readonly name: string;
  readonly house: House;
  /** Settings, lots and the stages' logs as they lie there. */
  readonly files: readonly LogFile[];
  /** The headings of each stage's log; none where it is not there yet. */
  readonly headings: Readonly<Record<WriteUpTable, readonly string[]>>;
  /**
   * Adds a row to a stage's log, as it lies there now, and makes the file where there is none.
   *
   * @throws {Error} with a sentence where it cannot be added; the file is then as it was
   */
  add(table: WriteUpTable, run: string, typed: StageDraft): Promise<TakeOut>;
  /** The folder as it lies there now. */
  again(): Promise<LogsFolder>;
}

const READ = ["house.toml", "grain-lots.csv", ...writeUpTables.map((table) => `${table}.csv`)];

async function bytesOf(folder: FileSystemDirectoryHandle, name: string): Promise<Uint8Array | null> {
  try {
    const file = await (await folder.getFileHandle(name)).getFile();
    return new Uint8Array(await file.arrayBuffer());
  } catch (error) {
    if (error instanceof DOMException && error.name === "NotFoundError") return null;
    throw error;
  }
}

const asLog = (path: string, bytes: Uint8Array): LogFile => ({
  path,
  async *chunks() {
    yield bytes;
  },
});

async function rowsRead(house: LogFile, path: string, bytes: Uint8Array): Promise<number> {
  const { files } = await readLogs([house, asLog(path, bytes)]);
  return files.find((file) => file.path === path)?.rows ?? 0;
}

async function write(folder: FileSystemDirectoryHandle, name: string, at: number, bytes: Uint8Array): Promise<void> {
  const file = await folder.getFileHandle(name, { create: true });
  // Nothing of it is on the disk before it is closed.
  const writing = await file.createWritable({ keepExistingData: true });
  await writing.write({ type: "write", position: at, data: bytes as Uint8Array<ArrayBuffer> });
  await writing.close();
}

const areSame = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, at) => byte === b[at]);

async function putBack(
  folder: FileSystemDirectoryHandle,
  name: string,
  before: Uint8Array | null,
  after: Uint8Array,
): Promise<void> {
  const now = await bytesOf(folder, name);
  if (now === null || !areSame(now, after)) {
    const what = now === null ? "is no longer there" : "was changed after the row was added";
    throw new Error(`${name} ${what}, and was left alone: take the row out of it yourself.`);
  }
  if (before === null) {
    await folder.removeEntry(name);
    return;
  }
  const file = await (await folder.getFileHandle(name)).createWritable({ keepExistingData: true });
  await file.truncate(before.length);
  await file.close();
}

async function addRow(
  folder: FileSystemDirectoryHandle,
  house: House,
  settings: LogFile,
  table: WriteUpTable,
  run: string,
  typed: StageDraft,
): Promise<TakeOut> {
  const path = `${table}.csv`;
  const before = await bytesOf(folder, path);
  if (before === null || before.length === 0) {
    const whole = new TextEncoder().encode(stageCsv(table, run, typed, house));
    await write(folder, path, 0, whole);
    return () => putBack(folder, path, before, whole);
  }
  const added = await appendRow({ path, bytes: before }, table, run, typed, house);
  if (added.kind === "refusal") throw new Error(added.sentence);
  const after = new Uint8Array(before.length + added.bytes.length);
  after.set(before);
  after.set(added.bytes, before.length);
  // Read as it would be read, before anything is written: a quotation mark left open above would swallow the row.
  if ((await rowsRead(settings, path, after)) !== (await rowsRead(settings, path, before)) + 1) {
    throw new Error(`${path} would not be read with this row at its end; look at its last lines, or download the row.`);
  }
  await write(folder, path, before.length, added.bytes);
  return () => putBack(folder, path, before, after);
}

/** Lets the reader choose their logs folder. @returns null where they chose none */
export async function chooseFolder(): Promise<FileSystemDirectoryHandle | null> {
  const chooser = picker();
  if (chooser === null) throw new RangeError("this browser has no folder picker");
  try {
    return await chooser.showDirectoryPicker({ mode: "readwrite", id: "logs" });
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return null;
    throw error;
  }
}

/**
 * Reads what is needed of a logs folder to add to it.
 *
 * @throws {Error} with a sentence where the folder is not one of logs; {DOMException} where it cannot be read
 */
export async function readLogsFolder(folder: FileSystemDirectoryHandle): Promise<LogsFolder> {
  const found = await Promise.all(READ.map(async (name) => [name, await bytesOf(folder, name)] as const));
  const present = found.flatMap(([name, bytes]) => (bytes === null ? [] : [[name, bytes] as const]));
  if (present.length === 0) {
    throw new Error(
      `The folder ${folder.name} holds neither house.toml nor a log of a stage: choose the one with the logs.`,
    );
  }
  const textOf = (name: string): string => {
    const bytes = present.find(([one]) => one === name)?.[1];
    return bytes === undefined ? "" : new TextDecoder().decode(bytes);
  };
  const { house } = readHouse(textOf("house.toml"));
  const settings = textFile("house.toml", textOf("house.toml"));
  const headings = Object.fromEntries(
    writeUpTables.map((table) => [table, headingsOf(textOf(`${table}.csv`), house, `${table}.csv`).names]),
  ) as unknown as LogsFolder["headings"];
  return {
    name: folder.name,
    house,
    files: [settings, ...present.filter(([name]) => name !== "house.toml").map(([name, bytes]) => asLog(name, bytes))],
    headings,
    add: (table, run, typed) => addRow(folder, house, settings, table, run, typed),
    again: () => readLogsFolder(folder),
  };
}
