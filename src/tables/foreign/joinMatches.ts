import type { ForeignMatch } from "./foreignMatch.ts";
import { readMatches } from "./readMatches.ts";
import { writeMatches } from "./writeMatches.ts";

/** A columns.toml with more matches in it than before. */
export interface JoinedMatches {
  readonly text: string;
  /** False where the one from before cannot be read, so that only the added matches stand in it. */
  readonly keepsOlder: boolean;
}

/**
 * Adds matches to a columns.toml. What stands in it stays as it was written, remarks and all, where that can be done; else
 * its matches are written anew.
 *
 * @param older text of the columns.toml; null where there is none
 */
export function joinMatches(older: string | null, added: readonly ForeignMatch[]): JoinedMatches {
  const alone = writeMatches(added);
  if (older === null || older.trim() === "") return { text: alone, keepsOlder: true };
  const before = readMatches(older);
  if (before.problems.some(({ rule }) => rule === "match-unreadable")) return { text: alone, keepsOlder: false };
  if (added.length === 0) return { text: older, keepsOlder: true };
  const blocks = alone.slice(alone.indexOf("[[match]]"));
  const behind = `${older.trimEnd()}\n\n${blocks}`;
  const { matches } = readMatches(behind);
  if (matches.length === before.matches.length + added.length) return { text: behind, keepsOlder: true };
  return { text: writeMatches([...before.matches, ...added]), keepsOlder: true };
}
