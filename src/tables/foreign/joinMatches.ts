import type { ForeignMatch } from "./foreignMatch.ts";
import { readMatches } from "./readMatches.ts";
import { writeMatches } from "./writeMatches.ts";

/** A columns.toml with more matches in it than before. */
export interface JoinedMatches {
  readonly text: string;
  /** False where the one from before cannot be read, so that only the added matches stand in it. */
  readonly keepsOlder: boolean;
}

const HEAD = /^[ \t]*\[\[[ \t]*match[ \t]*\]\]/m;

/** The text without the blocks of some matches; remarks at the end of a block stay, since they mostly speak of the next. */
function withoutBlocks(text: string, isGone: (match: ForeignMatch) => boolean): string {
  const [head = "", ...blocks] = text.split(new RegExp(`(?=${HEAD.source})`, "m"));
  // Before the first of them stands what speaks of the file, unless it begins with one.
  const all = HEAD.test(head) ? [head, ...blocks] : blocks;
  const kept = all.map((block) => {
    const [only] = readMatches(block).matches;
    if (only === undefined || !isGone(only)) return block;
    return /(?:(?:^|\n)[ \t]*(?:#[^\n]*)?)*$/.exec(block.trimEnd())?.[0].concat("\n") ?? "";
  });
  return [...(HEAD.test(head) ? [] : [head]), ...kept].join("");
}

/** An older columns.toml without the matches for these patterns. */
function without(older: string, patterns: ReadonlySet<string>): string {
  const isGone = ({ files }: ForeignMatch): boolean => patterns.has(files);
  const left = readMatches(older).matches.filter((match) => !isGone(match));
  const text = withoutBlocks(older, isGone);
  return writeMatches(readMatches(text).matches) === writeMatches(left) ? text : writeMatches(left);
}

/**
 * Adds matches to a columns.toml. What stands in it stays as it was written, remarks and all, where that can be done; else
 * its matches are written anew.
 *
 * @param given text of the columns.toml; null where there is none
 * @param replaced patterns whose matches in it the added ones stand for
 */
export function joinMatches(
  given: string | null,
  added: readonly ForeignMatch[],
  replaced: ReadonlySet<string> = new Set(),
): JoinedMatches {
  const older = given === null || replaced.size === 0 ? given : without(given, replaced);
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
