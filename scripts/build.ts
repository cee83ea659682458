// npm run build [-- --logs DIR] [-- --out DIR]: builds the site and leaves it there, to be put on any static host.

import { buildSite, DEMO_LOGS } from "./buildSite.ts";
import { readOptions } from "./readOptions.ts";

const values = readOptions("npm run build [-- --logs DIR] [-- --out DIR]", {
  logs: { type: "string" },
  out: { type: "string" },
});
await buildSite({ logs: values.logs ?? DEMO_LOGS, outDir: values.out ?? "dist" });
