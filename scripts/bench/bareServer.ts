import { createReadStream, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES: Readonly<Record<string, string>> = {
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".wasm": "application/wasm",
  ".csv": "text/csv; charset=utf-8",
  ".bin": "application/octet-stream",
};

const [packages = ""] = fileURLToPath(import.meta.resolve("@duckdb/duckdb-wasm/dist/duckdb-eh.wasm")).split(
  /[\\/]@duckdb[\\/]/,
);

/** DuckDB's own browser build as its package ships it; what it imports is found by this map, so nothing is bundled. */
const PAGE = `<!doctype html><html lang="en"><meta charset="utf-8"><title>DuckDB alone</title>
<script type="importmap">${JSON.stringify({
  imports: {
    "apache-arrow": "/packages/apache-arrow/Arrow.dom.mjs",
    flatbuffers: "/packages/flatbuffers/mjs/flatbuffers.js",
    tslib: "/packages/tslib/tslib.es6.mjs",
  },
})}</script>
<script type="module">
  window.duckdb = await import("/packages/@duckdb/duckdb-wasm/dist/duckdb-browser.mjs");
</script></html>`;

/** Serves a page with DuckDB alone, the packages beside it and, under `/site/`, a built site's tables and engine. */
export function serveBare(siteFolder: string): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://localhost");
    if (pathname === "/") {
      response.writeHead(200, { "content-type": "text/html; charset=utf-8" }).end(PAGE);
      return;
    }
    const file = pathname.startsWith("/packages/")
      ? join(packages, pathname.slice("/packages/".length))
      : join(siteFolder, pathname.slice("/site/".length));
    const found = statSync(file, { throwIfNoEntry: false });
    if (!found?.isFile()) {
      response.writeHead(404).end();
      return;
    }
    const type = TYPES[extname(file)] ?? "application/octet-stream";
    response.writeHead(200, { "content-type": type, "content-length": found.size });
    createReadStream(file).pipe(response);
  });
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address() as { port: number };
      resolve({ server, address: `http://127.0.0.1:${port}/` });
    });
  });
}
