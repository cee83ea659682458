/** What a column of an answer holds, as far as a page must know to print, draw and write it. */
export type AskedKind = "number" | "text" | "instant" | "date" | "flag";

export interface AskedColumn {
  readonly name: string;
  readonly kind: AskedKind;
}

/** Instants and dates are milliseconds since 1970 as the query gave them, flags are booleans, lists are text. */
export type AskedValue = number | string | boolean | null;

/** The answer to a question that a reader asked in SQL. Plain data: it crosses from the worker to its page. */
export interface AskedAnswer {
  readonly columns: readonly AskedColumn[];
  readonly rows: readonly (readonly AskedValue[])[];
  /** True where the query had more rows than were asked for. */
  readonly more: boolean;
}
