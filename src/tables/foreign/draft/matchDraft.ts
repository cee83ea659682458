import type { Column, TableName } from "../../declarations.ts";
import type { DateOrder } from "../../house.ts";
import { declarationOf } from "../../tableDeclarations.ts";
import type { GuessedColumn } from "../guessColumns.ts";
import type { SampleLayout } from "../sampleLayout.ts";

// How somebody is about to have a foreign file read: seen from the file, heading by heading, where a match is seen from the
// log format, table by table. Everything in here is a value; each change makes a new draft.

/** One table that the file holds. The same table may stand twice: a logger of two kilns makes readings of each. */
export interface DraftPart {
  /** Unlike any other of its draft: `readings`, `readings 2`. */
  readonly id: string;
  readonly table: TableName;
  /** By stem: what is the same in the whole file, of the columns that no heading fills. */
  readonly fixed: ReadonlyMap<string, string>;
}

/** What a column of the file was said to be. */
export type HeadingUse =
  /** Not read; kept beside the batch and used nowhere; which probe a row is of; what that probe read. */
  | { readonly kind: "unread" | "kept" | "probe" | "value" }
  /** The time of day that belongs to the date in another column, by its place from 0. */
  | { readonly kind: "clock"; readonly of: number }
  /** A column of the log format, in one part or, with null, in every part that has it. */
  | { readonly kind: "column"; readonly part: string | null; readonly stem: string };

export interface DraftHeading {
  /** From 0. */
  readonly place: number;
  readonly use: HeadingUse;
  /** Key of a `UnitChoice` of the column that it is. */
  readonly unit: string;
  /** What stands behind every value and is taken off. */
  readonly without: string | null;
  /** What the file's own words mean; blank where nobody has said it yet. */
  readonly words: ReadonlyMap<string, string>;
  /** How well the heading's words fit, 0 to 1; null once somebody has chosen. */
  readonly score: number | null;
  /** Where the unit comes from; `said` once somebody has chosen it. */
  readonly unitFrom: GuessedColumn["unitFrom"] | "said";
}

/** A probe of a file with a row for each probe. */
export interface DraftProbe {
  readonly name: string;
  /** Column of the readings; null for a probe that is not read. */
  readonly stem: string | null;
  readonly unit: string;
}

export interface MatchDraft {
  readonly path: string;
  readonly sample: SampleLayout;
  readonly encoding: string | null;
  readonly decimal: "." | "," | null;
  readonly dateOrder: DateOrder;
  readonly shortYears: boolean;
  readonly parts: readonly DraftPart[];
  readonly headings: readonly DraftHeading[];
  readonly probes: readonly DraftProbe[];
  /** Headings and probes that other files of the same pattern have and nobody wants; from an earlier columns.toml. */
  readonly unwantedElsewhere: readonly string[];
}

/** The next free id of a part of this table. */
export function freePartId(parts: readonly DraftPart[], table: TableName): string {
  let id: string = table;
  for (let number = 2; parts.some((part) => part.id === id); number++) id = `${table} ${number}`;
  return id;
}

export const stemColumn = (table: TableName, stem: string): Column | null =>
  declarationOf(table).columns.find((column) => column.stem === stem) ?? null;

/** The parts in which a use fills a column. */
export function partsOf({ parts }: Pick<MatchDraft, "parts">, use: HeadingUse): readonly DraftPart[] {
  if (use.kind !== "column") return [];
  return parts.filter(
    ({ id, table }) => (use.part === null || use.part === id) && stemColumn(table, use.stem) !== null,
  );
}

/** The column of the log format that a heading is; null where it is none. */
export function columnOf(draft: Pick<MatchDraft, "parts">, { use }: Pick<DraftHeading, "use">): Column | null {
  const [first] = partsOf(draft, use);
  return first !== undefined && use.kind === "column" ? stemColumn(first.table, use.stem) : null;
}

/** The values of a column in the rows that are looked at, blanks left out. */
export const valuesAt = ({ sample }: Pick<MatchDraft, "sample">, place: number): readonly string[] =>
  sample.rows.flatMap((row) => row[place] || []);

/** All dates and times that the draft reads; while it reads none, whatever looks like a date. */
export function whenValues(draft: Pick<MatchDraft, "parts" | "headings" | "sample">): readonly string[] {
  const read = draft.headings.flatMap((heading) => {
    const kind = columnOf(draft, heading)?.kind;
    return kind === "instant" || kind === "date" ? valuesAt(draft, heading.place) : [];
  });
  return read.length > 0 ? read : draft.sample.rows.flat().filter((value) => /^\d{1,4}([./-])\d{1,2}\1\d/.test(value));
}

/** Whether a column of the file holds anything: a trailing delimiter makes columns without. */
export const holdsAnything = (draft: Pick<MatchDraft, "sample">, place: number): boolean =>
  draft.sample.headings[place] !== "" || valuesAt(draft, place).length > 0;

/** Whether a column that nobody wants is kept beside the batch: only logs of batches have a place for it. */
export const keepsBeside = ({ parts }: Pick<MatchDraft, "parts">): boolean =>
  parts.some(({ table }) => stemColumn(table, "run") !== null);

/** What a column is that is nothing else. */
export const leftOver = (draft: Pick<MatchDraft, "parts" | "sample">, place: number): HeadingUse =>
  keepsBeside(draft) && holdsAnything(draft, place) ? { kind: "kept" } : { kind: "unread" };
