import type { TableName } from "../declarations.ts";
import type { DateOrder } from "../house.ts";

/** A column of a foreign file: by its heading, or by its place from 1 where headings are missing or stand twice. */
export type ForeignColumn = string | number;

/** One column of the log format, and where a foreign file has it. */
export interface ColumnMatch {
  /** The column's name in the log format, unit and all: `bed_depth_in`, `at_utc`. */
  readonly to: string;
  /** Where it stands; two of them (a date and a time of day) are joined by a space. */
  readonly from: readonly ForeignColumn[];
  /** What a number is multiplied by to be in the unit that `to` names: 1000 for tonnes into kg, 100 for shares into %. */
  readonly times: number | null;
  /** Text that stands behind the values and is taken off: `°C`. */
  readonly without: string | null;
  /** What the file's own words mean: `heating` is `1`. */
  readonly words: ReadonlyMap<string, string>;
}

/** A file with a row for each probe: one column says which probe, one says what it read. */
export interface ProbeRows {
  readonly probe: ForeignColumn;
  readonly value: ForeignColumn;
  /** By the probe's name in the file: the column of the log format, and its factor as in {@link ColumnMatch}. */
  readonly columns: ReadonlyMap<string, string>;
  readonly without: string | null;
}

/** How files that are not in the log format are read as one of its tables: one block of columns.toml. */
export interface ForeignMatch {
  /** Paths inside the logs folder; `*` stands for anything but a slash. */
  readonly files: string;
  readonly table: TableName;
  readonly encoding: string | null;
  readonly delimiter: string | null;
  readonly decimal: "." | "," | null;
  readonly dateOrder: DateOrder | null;
  /** Years are written with two digits, and mean 2000 to 2099. */
  readonly shortYears: boolean;
  /** Lines above the headings. */
  readonly skipLines: number;
  /** Lines between the headings and the first row, such as one that names the units. */
  readonly skipAfterHeadings: number;
  /** False of a file that begins with its first row; columns then go by their places. */
  readonly headings: boolean;
  readonly columns: readonly ColumnMatch[];
  /** Columns of the log format that have one value in the whole file: `kiln` is `K1`. */
  readonly fixed: ReadonlyMap<string, string>;
  readonly probeRows: ProbeRows | null;
  /** Headings, or probes, that are known and not wanted. */
  readonly ignore: readonly string[];
}

/** A match that says nothing but its table, to be filled in. */
export function emptyMatch(files: string, table: TableName): ForeignMatch {
  return {
    files,
    table,
    encoding: null,
    delimiter: null,
    decimal: null,
    dateOrder: null,
    shortYears: false,
    skipLines: 0,
    skipAfterHeadings: 0,
    headings: true,
    columns: [],
    fixed: new Map(),
    probeRows: null,
    ignore: [],
  };
}

/** Where columns.toml lies among the logs. */
export const MATCH_FILE = "columns.toml";

/** True for a path that `pattern` means. */
export function meansFile(pattern: string, path: string): boolean {
  const parts = pattern.split("*").map((part) => part.replaceAll(/[.+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^${parts.join("[^/]*")}$`, "i").test(path);
}

/**
 * The pattern that next month's file of the same kind will answer to: dates and running numbers become `*`. A name of
 * nothing else keeps its century, or all of itself: among the logs `*.csv` would mean every one of them. A number that
 * hangs on a word stays, since K1 is another kiln than K2.
 */
export function patternOf(path: string): string {
  const cut = path.lastIndexOf("/") + 1;
  const name = path.slice(cut);
  const pattern = name.replaceAll(/(?:(?<![\p{L}\d])\d[\d_.\- ]*\d|\d{4,})(?=\D)/gu, (found) =>
    found.replaceAll(/\D/g, "").length >= 3 ? "*" : found,
  );
  if (cut > 0 || /\p{L}/u.test(pattern.replace(/\.\w+$/, ""))) return path.slice(0, cut) + pattern;
  return name.startsWith("20") ? `20${pattern}` : name;
}
