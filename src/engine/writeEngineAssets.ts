import { mkdir, readFile, rename, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { gzip } from "node:zlib";
import { PACKAGE_VERSION } from "@duckdb/duckdb-wasm/blocking";
import { engineFiles } from "./engineFiles.ts";

const inPackage = (file: string): string => fileURLToPath(import.meta.resolve(`@duckdb/duckdb-wasm/dist/${file}`));

/** Beside the packages themselves, so that an install of another version starts afresh. */
function cacheFolder(): string {
  const [packages = ""] = inPackage("duckdb-eh.wasm").split(/[\\/]@duckdb[\\/]/);
  return join(packages, ".cache", "piecebook");
}

async function gzippedModule(name: string): Promise<Uint8Array> {
  const kept = join(cacheFolder(), name);
  const before = await readFile(kept).catch(() => null);
  if (before) return before;
  const packed = await promisify(gzip)(await readFile(inPackage("duckdb-eh.wasm")), { level: 9 });
  await mkdir(dirname(kept), { recursive: true });
  // Written beside and then renamed, so that a build that was cut short leaves no half of a file behind.
  await writeFile(`${kept}.${process.pid}`, packed);
  await rename(`${kept}.${process.pid}`, kept);
  return packed;
}

/** The worker without the line that points at a source map, which is not shipped. */
async function workerScript(): Promise<string> {
  const script = await readFile(inPackage("duckdb-browser-eh.worker.js"), "utf8");
  return script.replace(/\n\/\/# sourceMappingURL=.*\s*$/, "\n");
}

/**
 * Writes what the browser needs to start the engine into `<outDir>/engine/`: the module, gzipped, and the worker's
 * script. Packing takes some seconds and is done once for each version of the package.
 *
 * @param outDir the built site's folder; it need not exist
 * @returns the two files' names
 */
export async function writeEngineAssets(outDir: string): Promise<readonly string[]> {
  const { module, worker } = engineFiles(PACKAGE_VERSION);
  const folder = join(outDir, "engine");
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, module), await gzippedModule(module));
  await writeFile(join(folder, worker), await workerScript());
  return [module, worker];
}
