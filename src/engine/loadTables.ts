import type { CsvTable } from "../tables/csvTable.ts";
import { type ArrowTable, arrowRows } from "./arrowRows.ts";
import { type AskConnection, askReadOnly } from "./askReadOnly.ts";
import type { LoadableDatabase } from "./database.ts";
import { quoteName, quoteText } from "./quote.ts";

/** What the two builds of the engine have in common: one answers at once, the other by promise. */
export interface EngineCalls {
  query(sql: string): ArrowTable | Promise<ArrowTable>;
  registerFileBuffer(name: string, bytes: Uint8Array): unknown;
  dropFile(name: string): unknown;
  /** Another connection to the same database. */
  connect(): AskConnection | Promise<AskConnection>;
  close(): void | Promise<void>;
}

/** The only folder, of memory and not of any disk, that queries may read from. */
const FOLDER = "logs/";

/** Casts that make every number a plain double; without them a DECIMAL would come back without its point. */
export const queryConfig = { castBigIntToDouble: true, castDecimalToDouble: true } as const;

/**
 * Nothing but buffers registered under `logs/` can be read from here on, no host can be asked for anything, and the
 * settings can no longer be changed. The order matters: each line shuts the door through which the one before went.
 */
const lockdown = [
  `SET allowed_directories=[${quoteText(FOLDER)}]`,
  "SET enable_external_access=false",
  "SET lock_configuration=true",
] as const;

function headerOf(csv: Uint8Array): string {
  const end = csv.indexOf(0x0a);
  return new TextDecoder().decode(end < 0 ? csv : csv.subarray(0, end)).trimEnd();
}

/**
 * The statement that reads a registered buffer into a table with explicit types. Nothing is sniffed.
 *
 * DuckDB takes the columns by position and never looks at the header when types are given, so a swapped column would
 * load silently: the header is compared here.
 *
 * @throws {RangeError} when the header is not the declared columns in their order
 */
export function createTableSql(table: CsvTable, file: string): string {
  const names = Object.keys(table.columns);
  const header = headerOf(table.csv);
  if (names.length === 0 || header !== names.join(","))
    throw new RangeError(`Table ${table.name} requires the header ${names.join(",")}; got ${header.slice(0, 200)}`);
  const types = Object.entries(table.columns).map(([name, type]) => `${quoteName(name)}: ${quoteText(type)}`);
  return `CREATE OR REPLACE TABLE ${quoteName(table.name)} AS
    SELECT * FROM read_csv(${quoteText(file)}, auto_detect = false, header = true, delim = ',', quote = '"',
      escape = '"', comment = '', nullstr = '', columns = {${types.join(", ")}})`;
}

/** Locks a started engine down, puts the first tables in and gives it the one interface that the rest knows. */
export async function openDatabaseOver(engine: EngineCalls, tables: readonly CsvTable[]): Promise<LoadableDatabase> {
  // A name is never used twice: the engine may keep what it knows of a file after the file is dropped.
  let buffers = 0;
  const database: LoadableDatabase = {
    async query<Row extends object>(sql: string) {
      return arrowRows<Row>(await engine.query(sql));
    },
    async load(more) {
      for (const table of more) {
        buffers += 1;
        const file = `${FOLDER}${buffers}.csv`;
        const create = createTableSql(table, file);
        // The browser's build moves the buffer into its worker and would leave the caller's empty.
        await engine.registerFileBuffer(file, table.csv.slice());
        try {
          await engine.query(create);
        } finally {
          await engine.dropFile(file);
        }
      }
    },
    ask: (sql, options) => askReadOnly(() => engine.connect(), sql, options),
    async close() {
      await engine.close();
    },
  };
  try {
    for (const statement of lockdown) await engine.query(statement);
    await database.load(tables);
  } catch (error) {
    await engine.close();
    throw error;
  }
  return database;
}
