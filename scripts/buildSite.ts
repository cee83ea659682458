import { resolve } from "node:path";
import { build } from "astro";

/** Where the project's own invented house keeps its logs; every page made from it says that it is invented. */
export const DEMO_LOGS = "data/demo";

/**
 * Builds the site from one folder of logs.
 *
 * The folder reaches the pages through the environment because Astro renders in modules of its own, which take no
 * arguments.
 */
export async function buildSite(options: { logs: string; outDir: string; quiet?: boolean }): Promise<void> {
  process.env.PIECEBOOK_LOGS = resolve(options.logs);
  await build({ outDir: resolve(options.outDir), logLevel: options.quiet ? "warn" : "info" });
}
