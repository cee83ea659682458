import type { UnitSuffix } from "../units/suffix.ts";
import type { Column } from "./declarations.ts";

/**
 * A column's name inside, in tables and in SQL: the stem with the unit kept inside (`bed_depth_m`, `grain_in_kg`,
 * `water_c`), whatever suffix the file used; the plain stem where there is no choice of unit. Instants lose `_utc`.
 */
export function insideName(column: Column): string {
  return column.family ? `${column.stem}_${column.family.inside}` : column.stem;
}

/** One way of writing a column's name in a file, and what its values then are. */
export interface FileName {
  readonly name: string;
  readonly suffix: UnitSuffix | null;
  /** Instants under this name are UTC, not the house's own time. */
  readonly utc: boolean;
}

/** Every name under which a file may hold `column`, the preferred one first. */
export function fileNames(column: Column): readonly FileName[] {
  if (column.family) {
    return column.family.suffixes.map((suffix) => ({ name: `${column.stem}_${suffix.suffix}`, suffix, utc: false }));
  }
  const plain: FileName = { name: column.stem, suffix: null, utc: false };
  return column.kind === "instant" ? [plain, { ...plain, name: `${column.stem}_utc`, utc: true }] : [plain];
}
