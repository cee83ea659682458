import { spawn } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** What one build of the site took. */
export interface Build {
  readonly seconds: number;
  /** The most memory that the building process held at once, as the operating system counts it. */
  readonly peakMegabytes: number;
}

const script = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/**
 * Builds the site in a process of its own, as `npm run build` does, and learns from it at its end how much memory it held.
 * Wall time is from starting Node to its end.
 *
 * @throws {Error} with the end of its output when the build fails
 */
export function buildInChild(logs: string, outDir: string): Promise<Build> {
  const note = `${outDir}.peak`;
  const start = performance.now();
  const child = spawn(
    process.execPath,
    ["--import", script("peakMemory.ts"), script("../build.ts"), "--logs", logs, "--out", outDir],
    { env: { ...process.env, PIECEBOOK_PEAK_NOTE: note }, stdio: ["ignore", "pipe", "pipe"] },
  );
  let said = "";
  const listen = (piece: Buffer): void => {
    said = (said + piece.toString()).slice(-4000);
  };
  child.stdout.on("data", listen);
  child.stderr.on("data", listen);
  return new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (code) => {
      const seconds = (performance.now() - start) / 1000;
      if (code !== 0) return reject(new Error(`the build ended with ${code}:\n${said}`));
      const kibibytes = Number(readFileSync(note, "utf8"));
      rmSync(note);
      resolve({ seconds, peakMegabytes: (kibibytes * 1024) / 1e6 });
    });
  });
}
