import type { UnitSystem } from "../../units/unitSystem.ts";
import type { Column, TableName } from "../declarations.ts";
import { fileNames } from "../insideName.ts";
import { declarationOf } from "../tableDeclarations.ts";

/** The three logs that a batch is written up in, in the order of the work. */
export const writeUpTables = ["steeping", "germination", "kilning"] as const;
export type WriteUpTable = (typeof writeUpTables)[number];

/** One box of a write-up: a column under the heading that its values are typed in. */
export interface WriteUpField {
  readonly heading: string;
  readonly column: Column;
  /** The unit to say beside the box. */
  readonly unit: string;
}

/** The heading under which a house of `units` types a column. */
function headingOf(column: Column, units: UnitSystem): string {
  const names = fileNames(column);
  const name = column.family && units === "us" ? (names[1] ?? names[0]) : names[0];
  return name?.name ?? column.stem;
}

/** The box for a column under one of its headings. @throws {RangeError} where the column has no such heading */
export function fieldUnder(column: Column, heading: string): WriteUpField {
  const name = fileNames(column).find((one) => one.name === heading);
  if (name === undefined) throw new RangeError(`the column ${column.stem} has no heading ${heading}`);
  return { heading, column, unit: name.suffix?.label ?? column.unit ?? "" };
}

/**
 * The boxes of one stage in the order of the work, without the batch's own name.
 *
 * @param headings the headings of the house's own file, where it is at hand: its columns are then typed in its units
 */
export function writeUpFields(
  table: WriteUpTable,
  units: UnitSystem,
  headings: readonly string[] = [],
): readonly WriteUpField[] {
  const own = headings.map((heading) => heading.trim().toLowerCase());
  return declarationOf(table)
    .columns.filter(({ stem }) => stem !== "run")
    .map((column) => {
      // Times are typed by the house's clock, whatever the file keeps.
      const named = fileNames(column).find(({ name, utc }) => !utc && own.includes(name));
      return fieldUnder(column, named?.name ?? headingOf(column, units));
    });
}

/** The column that a typed heading belongs to; null where the table has none of that name. */
export function columnUnder(table: TableName, heading: string): Column | null {
  return declarationOf(table).columns.find((column) => fileNames(column).some(({ name }) => name === heading)) ?? null;
}
