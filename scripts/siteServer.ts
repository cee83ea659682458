import { createReadStream, readFileSync, statSync } from "node:fs";
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

/** The customers' pages as their house may look at them at home. */
export interface Preview {
  /** The folder that a share wrote. */
  readonly folder: string;
  /** Keys by the customer's short name. */
  readonly keys: ReadonlyMap<string, string>;
}

const PREVIEW = "/preview/";

/** Puts links where the built page keeps a place for them: no built file has them, since a built file may be published. */
export function withPreviews(html: string, { keys }: Preview): string {
  const escaped = (text: string): string =>
    text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
  const links = new Map([...keys].map(([customer, key]) => [escaped(customer), key]));
  return html.replaceAll(/(<span data-preview="([^"]*)">)[^<]*(<\/span>)/g, (whole, open, customer, close) => {
    const key = links.get(customer);
    return key === undefined ? whole : `${open}<a href="${PREVIEW}${key}/index.html">preview</a>${close}`;
  });
}

/** Whether a request named this computer itself. A stranger's name may be made to lead here, for its page to read along. */
const namesHome = (host: string | undefined): boolean => /^(?:localhost|127\.0\.0\.1)(?::\d+)?$/.test(host ?? "");

/** Serves a built site on the loopback address, as any static host would: no rewriting, no compression, no headers of its own. */
export function serveFolder(
  folder: string,
  port: number,
  previews: Preview | null = null,
): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    let pathname: string;
    const preview = namesHome(request.headers.host) ? previews : null;
    try {
      pathname = new URL(request.url ?? "/", "http://localhost").pathname;
      const previewed = preview !== null && pathname.startsWith(PREVIEW) ? preview : null;
      const { path, status, bytes } =
        previewed === null ? fileFor(folder, pathname) : fileFor(previewed.folder, pathname.slice(PREVIEW.length - 1));
      if (preview !== null && pathname === "/shared-pages/") {
        const page = withPreviews(readFileSync(path, "utf8"), preview);
        response.writeHead(status, {
          "content-type": "text/html; charset=utf-8",
          "content-length": Buffer.byteLength(page),
        });
        response.end(page);
        return;
      }
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
