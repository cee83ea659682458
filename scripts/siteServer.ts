import { createReadStream, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { extname, join, normalize } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".txt": "text/plain; charset=utf-8",
  ".bin": "application/octet-stream",
};

function fileFor(folder: string, pathname: string): { path: string; status: number; bytes: number } {
  const inside = normalize(decodeURIComponent(pathname)).replace(/^(\.\.[/\\])+/, "");
  const wanted = join(folder, inside);
  for (const path of [wanted, join(wanted, "index.html")]) {
    const found = statSync(path, { throwIfNoEntry: false });
    if (found?.isFile()) return { path, status: 200, bytes: found.size };
  }
  const missing = join(folder, "404.html");
  return { path: missing, status: 404, bytes: statSync(missing).size };
}

/** Serves a built site on the loopback address, as any static host would: no rewriting, no compression, no headers of its own. */
export function serveFolder(folder: string, port: number): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    let pathname: string;
    try {
      pathname = new URL(request.url ?? "/", "http://localhost").pathname;
      const { path, status, bytes } = fileFor(folder, pathname);
      const type = TYPES[extname(path)] ?? "application/octet-stream";
      response.writeHead(status, { "content-type": type, "content-length": bytes });
      const stream = createReadStream(path);
      stream.on("error", () => response.destroy());
      stream.pipe(response);
    } catch {
      response.writeHead(400, { "content-type": "text/plain" }).end("The address could not be read.");
    }
  });
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => {
      const { port: chosen } = server.address() as { port: number };
      resolve({ server, address: `http://127.0.0.1:${chosen}/` });
    });
  });
}
