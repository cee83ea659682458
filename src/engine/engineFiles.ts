/**
 * Names of the engine's two files as the site ships them, by version, so that a browser that kept an older one fetches
 * the new one. The module is gzipped under a name that no server treats specially: a plain `.wasm` of 34 MB would pass the
 * size some hosts allow for one file, and few would compress it.
 */
export function engineFiles(version: string): { readonly module: string; readonly worker: string } {
  return { module: `duckdb-eh-${version}.bin`, worker: `duckdb-worker-${version}.js` };
}

/** Cache Storage that keeps the module between visits, where the browser has one. */
export const ENGINE_CACHE = "piecebook-engine";
