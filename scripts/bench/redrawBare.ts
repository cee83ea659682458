import type { AsyncDuckDB, ConsoleLogger } from "@duckdb/duckdb-wasm";
import type { Browser } from "playwright-core";

declare global {
  var duckdb: { AsyncDuckDB: typeof AsyncDuckDB; VoidLogger: new () => ConsoleLogger } | undefined;
}

/** A published table, and the statement that reads it with its types given. */
export interface BareTable {
  /** Where it lies on the bare page's own server. */
  readonly address: string;
  /** The name under which its buffer is registered and the statement reads it. */
  readonly file: string;
  readonly createSql: string;
}

/** Milliseconds: engine fetched and started; all tables there and read in (fetched while the engine starts). */
export interface BareLoad {
  readonly started: number;
  readonly loaded: number;
}

/**
 * DuckDB-Wasm by itself with an empty cache: fetch the engine, start it, fetch the tables, read them with their types given,
 * and nothing else. Its script has been imported before the clock starts.
 *
 * @param packed the engine's module as the site ships it, gzipped; null for the package's plain one, compiled as it comes
 */
export async function loadBare(
  browser: Browser,
  address: string,
  tables: readonly BareTable[],
  packed: string | null,
): Promise<BareLoad> {
  const context = await browser.newContext();
  try {
    const page = await context.newPage();
    await page.goto(address);
    await page.waitForFunction(() => globalThis.duckdb !== undefined);
    return await page.evaluate(
      async ([wanted, packedModule]) => {
        if (globalThis.duckdb === undefined) throw new Error("DuckDB's script is not there");
        const folder = "/packages/@duckdb/duckdb-wasm/dist/";
        const start = performance.now();
        const fetched = wanted.map(async (table) => (await fetch(table.address)).arrayBuffer());
        const engine = new globalThis.duckdb.AsyncDuckDB(
          new globalThis.duckdb.VoidLogger(),
          new Worker(`${folder}duckdb-browser-eh.worker.js`),
        );
        let module = `${folder}duckdb-eh.wasm`;
        if (packedModule !== null) {
          const { body } = await fetch(packedModule);
          if (body === null) throw new Error("the engine came without a body");
          const plain = await new Response(body.pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
          module = URL.createObjectURL(new Blob([plain], { type: "application/wasm" }));
        }
        await engine.instantiate(module);
        await engine.open({});
        const connection = await engine.connect();
        const started = performance.now() - start;
        for (const [i, { file, createSql }] of wanted.entries()) {
          await engine.registerFileBuffer(file, new Uint8Array((await fetched[i]) as ArrayBuffer));
          await connection.query(createSql);
        }
        const loaded = performance.now() - start;
        await engine.terminate();
        return { started, loaded };
      },
      [tables, packed] as const,
    );
  } finally {
    await context.close();
  }
}
