import type { UnitFamily } from "../units/suffix.ts";

/** Every table of the log format (data/README.md), by the name of its file or folder without extension. */
export type TableName =
  | "grain-lots"
  | "steeping"
  | "germination"
  | "acrospire-counts"
  | "kilning"
  | "moisture-samples"
  | "readings"
  | "weather"
  | "logger-checks"
  | "lab"
  | "orders"
  | "deliveries"
  | "customers"
  | "events"
  | "targets";

export type ColumnKind = "id" | "text" | "number" | "count" | "instant" | "date" | "flag" | "choice";

/** One column of one table: the single place that says what it is. Reader, SQL types and data/README.md all follow it. */
export interface Column {
  /** Name in the file without unit suffix (`bed_depth`); the whole name where there is no choice of unit. */
  readonly stem: string;
  readonly kind: ColumnKind;
  /** Without a value here the row cannot be read at all. */
  readonly needed?: true;
  /** The suffixes a file may choose from; absent where the name already says all (`final_moisture_pct`). */
  readonly family?: UnitFamily;
  /** Lowest and highest believable value, in the unit kept inside; outside, the value is blanked and reported. */
  readonly range?: readonly [low: number, high: number];
  readonly choices?: readonly string[];
  /** The unit in words for data/README.md where there is no family: `% of mass`, `h`. */
  readonly unit?: string;
  readonly meaning: string;
}

export interface TableDeclaration {
  readonly name: TableName;
  /** `kilning.csv`, or `readings/` where a folder holds any number of files. */
  readonly place: string;
  readonly meaning: string;
  readonly columns: readonly Column[];
}
