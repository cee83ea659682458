import type { TableName } from "../declarations.ts";
import type { House } from "../house.ts";
import type { Table } from "../table.ts";

/** What a rule may look at: every table as read so far, rows that earlier rules set aside already gone. */
export interface RuleContext {
  readonly house: House;
  readonly tables: ReadonlyMap<TableName, Table>;
  /** The present, where the caller has a clock; null leaves out what needs one. */
  readonly now: number | null;
}

/** A fault that no single value shows: rows that do not fit each other. */
export interface RuleFault {
  readonly table: TableName;
  readonly row: number;
  /** Inside names of the columns it concerns, those that are blanked where that is the effect; empty for the row. */
  readonly columns: readonly string[];
  readonly rule: string;
  readonly message: string;
  readonly hint: string;
  readonly effect: "row-set-aside" | "value-blanked" | "note";
  /** Where the row itself does not say. */
  readonly run?: string | null;
}

export type Rule = (context: RuleContext) => readonly RuleFault[];
