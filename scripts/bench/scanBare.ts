import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createDuckDB, DEFAULT_RUNTIME, VoidLogger } from "@duckdb/duckdb-wasm/blocking";
import { timed } from "./timed.ts";

const TYPES: Readonly<Record<string, string>> = { kiln: "VARCHAR", at_utc: "TIMESTAMP" };

/** DuckDB by itself: each file from the disk into a buffer and from there, types given, into a table. */
export async function scanBare(
  folder: string,
  files: readonly string[],
): Promise<{ milliseconds: number; rows: number }> {
  const module = fileURLToPath(import.meta.resolve("@duckdb/duckdb-wasm/dist/duckdb-eh.wasm"));
  const bundle = { mainModule: module, mainWorker: "" };
  const engine = await createDuckDB({ mvp: bundle, eh: bundle }, new VoidLogger(), DEFAULT_RUNTIME);
  await engine.instantiate(() => {});
  engine.open({ query: { castBigIntToDouble: true } });
  const connection = engine.connect();
  const headings = files.map((path) => readFileSync(join(folder, path), "utf8").split("\n", 1)[0]?.split(",") ?? []);
  const { milliseconds } = await timed(() => {
    for (const [i, path] of files.entries()) {
      const columns = (headings[i] as string[]).map((name) => `"${name}": '${TYPES[name] ?? "DOUBLE"}'`).join(", ");
      engine.registerFileBuffer(path, readFileSync(join(folder, path)));
      connection.query(
        `CREATE TABLE t${i} AS SELECT * FROM read_csv('${path}', auto_detect = false, header = true, delim = ',',
          timestampformat = '%Y-%m-%d %H:%M', columns = {${columns}})`,
      );
      engine.dropFile(path);
    }
  });
  let rows = 0;
  for (const i of files.keys()) {
    const counted = connection.query(`SELECT count(*) AS n FROM t${i}`).getChild("n")?.get(0);
    rows += Number(counted);
  }
  connection.close();
  engine.reset();
  return { milliseconds, rows };
}
