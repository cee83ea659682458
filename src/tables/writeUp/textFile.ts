import type { LogFile } from "../logFile.ts";

/** Text as a log file, in UTF-8. */
export function textFile(path: string, text: string, more: Pick<LogFile, "table"> = {}): LogFile {
  const bytes = new TextEncoder().encode(text);
  return {
    path,
    ...more,
    async *chunks() {
      yield bytes;
    },
  };
}
