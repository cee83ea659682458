import { copyFileSync, cpSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { build } from "astro";
import type { SharedSite } from "../../src/shared/sharedSite.ts";
import { handOver } from "../../src/shared/siteInHand.ts";
import { isKey } from "./keys.ts";

const STATIC = "src/shared/static";

const FACES: Readonly<Record<string, string>> = {
  "serif.woff2": "@fontsource-variable/source-serif-4/files/source-serif-4-latin-wght-normal.woff2",
  "sans.woff2": "@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2",
};

/** What stands at the top of a share: besides the customers' folders, these and no others. */
const OWN: ReadonlySet<string> = new Set(["index.html", "404.html", "robots.txt", "faces"]);

/** True of a folder that a share may replace: one that is not there, or holds nothing but what a share writes. */
export function mayReplace(outDir: string): boolean {
  if (!existsSync(outDir)) return true;
  const names = readdirSync(outDir);
  return names.length === 0 || (names.includes("faces") && names.every((name) => OWN.has(name) || isKey(name)));
}

/**
 * Builds the customers' pages apart, then puts them in place of what was in `outDir`: a build that fails leaves the old
 * pages, one that succeeds leaves nothing of them.
 *
 * @throws {RangeError} when `outDir` holds files that no share made
 */
export async function buildShared(site: SharedSite, outDir: string): Promise<void> {
  const target = resolve(outDir);
  if (!mayReplace(target)) {
    throw new RangeError(`${outDir} holds files that a share did not make; give another folder with --out`);
  }
  // Within the project and its own: Astro would otherwise put its workings where another build has them too.
  const apart = resolve(`dist-shared-${process.pid}`);
  const cacheDir = resolve(`node_modules/.astro-shared-${process.pid}`);
  handOver(site);
  try {
    await build({
      configFile: false,
      srcDir: "src/shared",
      publicDir: STATIC,
      outDir: apart,
      cacheDir,
      trailingSlash: "always",
      build: { format: "directory" },
      compressHTML: false,
      devToolbar: { enabled: false },
      markdown: { syntaxHighlight: false },
      logLevel: "warn",
      vite: { build: { sourcemap: false } },
    });
    mkdirSync(join(apart, "faces"));
    const { resolve: find } = createRequire(import.meta.url);
    for (const [name, from] of Object.entries(FACES)) copyFileSync(find(from), join(apart, "faces", name));
    // The target may lie on another disk, where nothing can be moved to at once.
    const beside = `${target}.new`;
    rmSync(beside, { recursive: true, force: true });
    cpSync(apart, beside, { recursive: true });
    rmSync(target, { recursive: true, force: true });
    renameSync(beside, target);
  } finally {
    handOver(null);
    for (const folder of [apart, cacheDir]) rmSync(folder, { recursive: true, force: true });
  }
}
