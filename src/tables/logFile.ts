import type { TableName } from "./declarations.ts";
import type { ForeignUse } from "./foreign/foreignPlan.ts";

/** One file of a logs folder, wherever it comes from: a disk, a file picker, an archive. */
export interface LogFile {
  /** Inside the logs folder, with `/` between parts: `readings/2026-03.csv`. */
  readonly path: string;
  /** The table that it holds, where that is known from its headings (`tableInFile`); else its place says. */
  readonly table?: TableName;
  /** How it is read where it is not in the log format; `withMatches` puts it there. */
  readonly foreign?: ForeignUse;
  /** The bytes from the start, in pieces of any size. Each call begins anew: a file may be read more than once. */
  chunks(): AsyncIterable<Uint8Array>;
}
