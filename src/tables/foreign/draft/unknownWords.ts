import { knowsFlag } from "../../cells.ts";
import type { Column } from "../../declarations.ts";
import type { SampleLayout } from "../sampleLayout.ts";

/** A column of more words than these is no column of words. */
const MOST_WORDS = 12;

/** The words of a file's column that the log format does not know, where `column` takes one of a few: `closed` for a heater. */
export function unknownWords({ rows }: Pick<SampleLayout, "rows">, place: number, column: Column): readonly string[] {
  if (column.kind !== "flag" && column.kind !== "choice") return [];
  const found = new Set(rows.flatMap((row) => row[place] || []));
  const known = (word: string): boolean =>
    column.kind === "flag" ? knowsFlag(word) : (column.choices ?? []).includes(word.toLowerCase());
  return [...found].filter((word) => !known(word)).slice(0, MOST_WORDS);
}
