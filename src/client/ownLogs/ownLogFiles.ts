import { MATCH_FILE } from "../../tables/foreign/foreignMatch.ts";
import type { LogFile } from "../../tables/logFile.ts";
import { tableInFile } from "../../tables/recogniseTable.ts";
import { printNumber } from "../../units/print.ts";
import { type ChosenFile, RefusedLogs } from "./chosenFile.ts";
import { isTextLog, logsInFolder } from "./logsInFolder.ts";
import type { SizedLog } from "./unpackArchive.ts";

/** Bytes that a browser can be asked to read, of all files and of one: a file is held whole while it is read. */
export interface SizeLimits {
  readonly all: number;
  readonly oneFile: number;
}

interface OwnLogFiles {
  /** As `readLogs` takes them, each with the table that its headings say. */
  readonly files: readonly LogFile[];
  /** Of all of them, unpacked. */
  readonly bytes: number;
}

interface Reading {
  /** Text of a house.toml for logs that bring none. */
  readonly house: string;
  readonly limits: SizeLimits;
  /** Bytes read, of all bytes there are. What is read twice counts by halves. */
  readonly onBytes: (received: number, total: number) => void;
}

const HOUSE = "house.toml";

const megabytes = (bytes: number): string => `${printNumber(bytes / 1_000_000, 0)}\u00a0MB`;

function refuseTooMuch(logs: readonly SizedLog[], { all, oneFile }: SizeLimits): void {
  const bytes = logs.reduce((sum, log) => sum + log.bytes, 0);
  const advice = "Choose fewer of the readings, or make the site on your computer, which has no such limit.";
  if (bytes > all) {
    throw new RefusedLogs(
      `These logs hold ${megabytes(bytes)}, and a browser has memory for about ${megabytes(all)} of them. ${advice}`,
    );
  }
  const large = logs.find((log) => log.bytes > oneFile);
  if (large !== undefined) {
    throw new RefusedLogs(
      `${large.path} holds ${megabytes(large.bytes)}, and one file may hold ${megabytes(oneFile)}. ` +
        "Several files of the same kind are read as one: part it, by year for instance.",
    );
  }
}

const houseFile = (text: string): SizedLog => {
  const bytes = new TextEncoder().encode(text);
  return {
    path: HOUSE,
    bytes: bytes.length,
    async *chunks() {
      yield bytes;
    },
  };
};

/**
 * What a reader chose, as a logs folder: archives unpacked, folders about it taken off, each table known by its headings.
 *
 * @throws {RefusedLogs} with a sentence where there is nothing to read, or more than a browser can hold
 */
export async function ownLogFiles(chosen: readonly ChosenFile[], reading: Reading): Promise<OwnLogFiles> {
  const { house, limits, onBytes } = reading;
  const { logs } = await logsInFolder(chosen);
  if (logs.length === 0) throw new RefusedLogs("There is no log among these files.");
  refuseTooMuch(logs, limits);
  const all = logs.some(({ path }) => path === HOUSE) ? logs : [...logs, houseFile(house)];
  const total = all.reduce((sum, log) => sum + log.bytes, 0);
  const files: LogFile[] = [];
  let received = 0;
  for (const log of all) {
    const table = isTextLog(log.path) ? await tableInFile(log) : null;
    // Files of readings are read twice: once for when they begin.
    const share = table === "readings" ? 0.5 : 1;
    files.push({
      path: log.path,
      ...(table === null ? {} : { table }),
      async *chunks() {
        for await (const chunk of log.chunks()) {
          received += chunk.length * share;
          onBytes(Math.round(received), total);
          yield chunk;
        }
      },
    });
  }
  if (!files.some(({ path, table }) => table !== undefined || path === MATCH_FILE)) {
    throw new RefusedLogs(
      "None of these files is a log that is known: a log is a CSV file whose first line names its columns. " +
        "Where one has headings of its own, say first what its columns are.",
    );
  }
  return { files, bytes: total };
}
