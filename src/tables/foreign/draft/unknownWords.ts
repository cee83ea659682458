import { knowsFlag } from "../../cells.ts";
import type { Column } from "../../declarations.ts";
import type { SampleLayout } from "../sampleLayout.ts";

/** The words of a file's column that the log format does not know, where `column` takes one of a few: `closed` for a heater. */
export function unknownWords({ few }: Pick<SampleLayout, "few">, place: number, column: Column): readonly string[] {
  if (column.kind !== "flag" && column.kind !== "choice") return [];
  const known = (word: string): boolean =>
    column.kind === "flag" ? knowsFlag(word) : (column.choices ?? []).includes(word.toLowerCase());
  return (few[place] ?? []).filter((word) => !known(word));
}
