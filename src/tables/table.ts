import type { TableName } from "./declarations.ts";

/**
 * One log table as read: checked, in SI and UTC, column by column.
 *
 * Numbers, instants (milliseconds UTC), dates (milliseconds at UTC midnight) and flags (0 or 1) are Float64Array with NaN for
 * *not recorded*; ids, texts and choices are arrays with null. A column that no file had is not in `columns`.
 */
export interface Table {
  readonly name: TableName;
  readonly rowCount: number;
  /** By the name kept inside: `bed_depth_m`, whatever suffix the file used. */
  readonly columns: ReadonlyMap<string, ColumnValues>;
  /** By the name kept inside: the suffixes in which files wrote a column that has a choice (`srm`, `lintner`, `utc`). */
  readonly writtenUnits: ReadonlyMap<string, readonly string[]>;
  /** Columns that LOGS does not know, by their own names, kept for the run page. */
  readonly unknownColumns: ReadonlyMap<string, readonly (string | null)[]>;
  /** Which file (index into `files`) and which line each row came from. */
  readonly files: readonly string[];
  readonly fileOfRow: Uint16Array;
  readonly lineOfRow: Int32Array;
}

export type ColumnValues = Float64Array | readonly (string | null)[];
