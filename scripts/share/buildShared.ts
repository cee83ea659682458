import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { build } from "astro";
import type { SharedSite } from "../../src/shared/sharedSite.ts";
import { handOver } from "../../src/shared/siteInHand.ts";

const STATIC = "src/shared/static";

const FACES: Readonly<Record<string, string>> = {
  "serif.woff2": "@fontsource-variable/source-serif-4/files/source-serif-4-latin-wght-normal.woff2",
  "sans.woff2": "@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2",
};

/**
 * True of a folder that a share may replace: one that is not there, is empty, or was made by a share, as its robots.txt
 * says. Anything else holds somebody's files.
 */
export function mayReplace(outDir: string): boolean {
  if (!existsSync(outDir)) return true;
  const own = join(outDir, "robots.txt");
  if (existsSync(own)) return readFileSync(own, "utf8") === readFileSync(join(STATIC, "robots.txt"), "utf8");
  return readdirSync(outDir).length === 0;
}

/**
 * Builds the customers' pages into a folder beside `outDir`, then puts it in place of what was there: a build that fails
 * leaves the old pages, one that succeeds leaves nothing of them.
 *
 * @throws {RangeError} when `outDir` holds files that no share made
 */
export async function buildShared(site: SharedSite, outDir: string): Promise<void> {
  const target = resolve(outDir);
  if (!mayReplace(target)) {
    throw new RangeError(`${outDir} holds files that a share did not make; give another folder with --out`);
  }
  const fresh = `${target}.new`;
  rmSync(fresh, { recursive: true, force: true });
  handOver(site);
  try {
    await build({
      configFile: false,
      srcDir: "src/shared",
      publicDir: STATIC,
      outDir: fresh,
      cacheDir: "node_modules/.astro-shared",
      trailingSlash: "always",
      build: { format: "directory" },
      compressHTML: false,
      devToolbar: { enabled: false },
      markdown: { syntaxHighlight: false },
      logLevel: "warn",
      vite: { build: { sourcemap: false } },
    });
  } finally {
    handOver(null);
  }
  mkdirSync(join(fresh, "faces"));
  const { resolve: find } = createRequire(import.meta.url);
  for (const [name, from] of Object.entries(FACES)) copyFileSync(find(from), join(fresh, "faces", name));
  rmSync(target, { recursive: true, force: true });
  renameSync(fresh, target);
}
