import type { CellFault } from "../cellFault.ts";
import { type ColumnMatch, MATCH_FILE } from "./foreignMatch.ts";
import { columnLine } from "./writeMatches.ts";

/** A longer text is no word that anybody would name. */
const LONGEST_WORD = 40;

/**
 * What to do about a value of a foreign file that the log format does not know: a relay's word may come first after months, when
 * nobody was asked for it.
 *
 * @param column how the file's match has it
 * @param value as the file has it
 * @returns the fault with the line of columns.toml that takes the word in; any other fault as it is
 */
export function withOwnWordHint(fault: CellFault, column: ColumnMatch, value: string): CellFault {
  if (value.length > LONGEST_WORD) return fault;
  if (fault.rule === "not-a-date") {
    const hint = /\p{L}{3}/u.test(value)
      ? "Names of months are read in English: have the file written with months as numbers."
      : `Say in ${MATCH_FILE} how the file writes its dates: date_order = "dmy", say, and short_years = true for years of two digits.`;
    return { ...fault, hint };
  }
  if (fault.rule !== "not-a-flag" && fault.rule !== "not-a-choice") return fault;
  const isFlag = fault.rule === "not-a-flag";
  const meant = isFlag ? "1" : "the word of the log format";
  const line = columnLine({ ...column, words: new Map([...column.words, [value, meant]]) });
  return {
    ...fault,
    hint: `If it is a word of the file’s own, say in ${MATCH_FILE} what it means${isFlag ? ", 1 for on or 0 for off" : ""}: ${line}`,
  };
}
