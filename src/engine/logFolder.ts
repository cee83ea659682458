import { createReadStream, readdirSync } from "node:fs";
import { join } from "node:path";
import type { LogFile } from "../tables/logFile.ts";

const BYTES_A_CHUNK = 256 * 1024;

/**
 * The files of a logs folder on disk, folders inside it included, ready for `readLogs`.
 *
 * @throws {Error} when the folder cannot be read
 */
export function logFolder(folder: string): readonly LogFile[] {
  const found: LogFile[] = [];
  const walk = (inside: string): void => {
    for (const entry of readdirSync(join(folder, inside), { withFileTypes: true })) {
      const path = inside === "" ? entry.name : `${inside}/${entry.name}`;
      if (entry.isDirectory() && !entry.name.startsWith(".")) walk(path);
      else if (entry.isFile()) {
        found.push({ path, chunks: () => createReadStream(join(folder, path), { highWaterMark: BYTES_A_CHUNK }) });
      }
    }
  };
  walk("");
  return found;
}
