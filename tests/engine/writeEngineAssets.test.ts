import { createHash } from "node:crypto";
import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { writeEngineAssets } from "../../src/engine/writeEngineAssets.ts";

const digest = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

test("writeEngineAssets ships the package's module gzipped and its worker without a source map", async () => {
  const folder = await mkdtemp(join(tmpdir(), "piecebook-"));
  try {
    const names = await writeEngineAssets(folder);
    expect(names.toSorted()).toEqual((await readdir(join(folder, "engine"))).toSorted());
    expect(names.filter((name) => /\.(wasm|map)$/.test(name))).toEqual([]);

    const [module = "", worker = ""] = names;
    const packed = await readFile(join(folder, "engine", module));
    const original = fileURLToPath(import.meta.resolve("@duckdb/duckdb-wasm/dist/duckdb-eh.wasm"));
    expect(digest(gunzipSync(packed))).toBe(digest(await readFile(original)));
    // Some hosts cap a file at 25 MiB.
    expect(packed.length).toBeLessThan(25 * 2 ** 20);

    const script = await readFile(join(folder, "engine", worker), "utf8");
    expect(script).not.toContain("sourceMappingURL");
    expect(script).toContain("onmessage");
  } finally {
    await rm(folder, { recursive: true });
  }
});
