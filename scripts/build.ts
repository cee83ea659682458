// npm run build [-- --logs DIR] [-- --out DIR]: builds the site and leaves it there, to be put on any static host.

import { parseArgs } from "node:util";
import { buildSite, DEMO_LOGS } from "./buildSite.ts";

const { values } = parseArgs({ options: { logs: { type: "string" }, out: { type: "string" } } });
await buildSite({ logs: values.logs ?? DEMO_LOGS, outDir: values.out ?? "dist" });
