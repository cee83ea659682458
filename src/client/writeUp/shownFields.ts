import type { Draft } from "../../tables/writeUp/draft.ts";
import {
  columnUnder,
  fieldUnder,
  type WriteUpField,
  type WriteUpTable,
  writeUpFields,
} from "../../tables/writeUp/writeUpStages.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";

/** The boxes of a stage; one that was typed in another unit keeps it, and the row is written in the file's. */
export function shownFields(
  table: WriteUpTable,
  draft: Draft,
  units: UnitSystem,
  headings: readonly string[],
): readonly WriteUpField[] {
  const typed = Object.keys(draft.stages[table] ?? {});
  return writeUpFields(table, units, headings).map((field) => {
    const under = typed.find((heading) => columnUnder(table, heading)?.stem === field.column.stem);
    return under === undefined || under === field.heading ? field : fieldUnder(field.column, under);
  });
}
