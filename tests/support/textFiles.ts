import type { LogFile } from "../../src/tables/logFile.ts";

/** A logs folder that exists as text only: path to content. */
export function textFiles(files: Readonly<Record<string, string>>): readonly LogFile[] {
  return Object.entries(files).map(([path, text]) => ({
    path,
    async *chunks() {
      yield new TextEncoder().encode(text);
    },
  }));
}
