// npm start [-- --logs DIR] [-- --port N] [-- --shared DIR]: builds the site from a folder of logs (the demo's unless told otherwise) and serves it.

import { existsSync } from "node:fs";
import { buildSite, DEMO_LOGS } from "./buildSite.ts";
import { readOptions } from "./readOptions.ts";
import { previewOf } from "./share/previewOf.ts";
import { serveFolder } from "./siteServer.ts";

const values = readOptions("npm start [-- --logs DIR] [-- --port N] [-- --shared DIR]", {
  logs: { type: "string" },
  port: { type: "string" },
  shared: { type: "string", default: "dist-shared" },
});
const logs = values.logs ?? DEMO_LOGS;
if (!existsSync(logs)) {
  console.error(`There is no folder ${logs}: give the folder that holds your CSV logs.`);
  process.exit(2);
}
await buildSite({ logs, outDir: "dist" });

const wantedPort = values.port === undefined ? 4321 : Number(values.port);
const preview = await previewOf(logs, values.shared);
const { address } = await serveFolder("dist", wantedPort, preview).catch(() => serveFolder("dist", 0, preview));
console.log(`\nPiecebook is at ${address}   (made from ${logs}; stop with Ctrl+C)`);
