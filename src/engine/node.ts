import { fileURLToPath } from "node:url";
import { createDuckDB, DEFAULT_RUNTIME, VoidLogger } from "@duckdb/duckdb-wasm/blocking";
import type { CsvTable } from "../tables/csvTable.ts";
import type { LoadableDatabase } from "./database.ts";
import { openDatabaseOver, queryConfig } from "./loadTables.ts";

/**
 * Opens DuckDB inside this Node process, in memory, with `tables` in it: for the build, the scripts and the tests.
 * It is the very module that the browser runs, so both give the same numbers.
 *
 * The engine gets the runtime that knows no file system (`DEFAULT_RUNTIME`), not Node's: even where a folder `logs/`
 * stands in the working directory, no query can read or write it.
 *
 * @throws {RangeError} when a table is not what {@link CsvTable} says
 */
export async function openNodeDatabase(tables: readonly CsvTable[]): Promise<LoadableDatabase> {
  const module = fileURLToPath(import.meta.resolve("@duckdb/duckdb-wasm/dist/duckdb-eh.wasm"));
  const bundle = { mainModule: module, mainWorker: "" };
  const engine = await createDuckDB({ mvp: bundle, eh: bundle }, new VoidLogger(), DEFAULT_RUNTIME);
  await engine.instantiate(() => {});
  engine.open({ query: queryConfig });
  const connection = engine.connect();
  return openDatabaseOver(
    {
      query: (sql) => connection.query(sql),
      registerFileBuffer: (name, bytes) => engine.registerFileBuffer(name, bytes),
      dropFile: (name) => engine.dropFile(name),
      connect: () => engine.connect(),
      close() {
        connection.close();
        engine.reset();
      },
    },
    tables,
  );
}
