import { rm } from "node:fs/promises";
import { resolve } from "node:path";
import type { TestProject } from "vitest/node";
import { buildSite, DEMO_LOGS } from "../../scripts/buildSite.ts";
import { serveFolder } from "../../scripts/siteServer.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Address of the demo's site, with a closing slash. */
    readonly site: string;
    /** The folder it was built into. */
    readonly siteFolder: string;
  }
}

/** Its own for each run of the tests, so that two at once do not take each other's site away. */
const FOLDER = `dist-test-${process.pid}`;

/** Builds the demo's site once and serves it to every browser test. */
export default async function builtSite(project: TestProject): Promise<() => Promise<void>> {
  await buildSite({ logs: DEMO_LOGS, outDir: FOLDER, quiet: true });
  const { server, address } = await serveFolder(FOLDER, 0);
  project.provide("site", address);
  project.provide("siteFolder", resolve(FOLDER));
  return async () => {
    server.closeAllConnections();
    await new Promise((closed) => server.close(closed));
    await rm(FOLDER, { recursive: true, force: true });
  };
}
