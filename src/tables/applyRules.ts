import type { TableName } from "./declarations.ts";
import type { House } from "./house.ts";
import { insideName } from "./insideName.ts";
import { withRows } from "./mergeFiles.ts";
import { type ProblemLog, quotedValue } from "./problemLog.ts";
import { allRules } from "./rules/allRules.ts";
import type { Rule, RuleFault } from "./rules/rule.ts";
import type { ColumnValues, Table } from "./table.ts";
import { declarationOf } from "./tableDeclarations.ts";

/** A column's name as its file has it. */
function headingOf(table: Table, inside: string): string {
  const column = declarationOf(table.name).columns.find((candidate) => insideName(candidate) === inside);
  const unit = table.writtenUnits.get(inside)?.[0];
  return column && unit ? `${column.stem}_${unit}` : inside;
}

/** A value as a Problem shows it: text, or the number in the unit kept inside; moments speak through the message. */
function shownValue(table: Table, inside: string, row: number): string | null {
  const value = table.columns.get(inside)?.[row];
  if (typeof value === "string") return quotedValue(value);
  if (value === undefined || value === null || Number.isNaN(value)) return null;
  const column = declarationOf(table.name).columns.find((candidate) => insideName(candidate) === inside);
  if (column?.kind === "instant") return `${new Date(value).toISOString().slice(0, 16)}Z`;
  if (column?.kind === "date") return new Date(value).toISOString().slice(0, 10);
  return `${Number(value.toPrecision(10))}${column?.family ? ` ${column.family.inside}` : ""}`;
}

function blanked(values: ColumnValues, rows: ReadonlySet<number>): ColumnValues {
  if (values instanceof Float64Array) return values.map((value, row) => (rows.has(row) ? Number.NaN : value));
  return values.map((value, row) => (rows.has(row) ? null : value));
}

function report(table: Table, fault: RuleFault, log: ProblemLog): void {
  const { row, columns, rule, message, hint, effect } = fault;
  const column = columns[0] ?? null;
  const runs = table.columns.get("run");
  const run = fault.run ?? (runs && !(runs instanceof Float64Array) ? (runs[row] ?? null) : null);
  log.add(
    {
      file: table.files[table.fileOfRow[row] as number] as string,
      line: table.lineOfRow[row] as number,
      column: column === null ? null : headingOf(table, column),
      value: column === null ? null : shownValue(table, column, row),
      rule,
      message,
      hint,
      effect,
      run,
    },
    columns.length,
  );
}

function applied(table: Table, faults: readonly RuleFault[], log: ProblemLog): Table {
  const aside = new Set<number>();
  const toBlank = new Map<string, Set<number>>();
  for (const fault of faults) {
    report(table, fault, log);
    if (fault.effect === "row-set-aside" && !aside.has(fault.row)) {
      aside.add(fault.row);
      log.countsOf(table.files[table.fileOfRow[fault.row] as number] as string).rowsSetAside++;
    }
    if (fault.effect !== "value-blanked") continue;
    for (const column of fault.columns) {
      const rows = toBlank.get(column) ?? new Set<number>();
      toBlank.set(column, rows.add(fault.row));
    }
  }
  const columns = new Map(table.columns);
  for (const [name, rows] of toBlank) {
    const values = columns.get(name);
    if (values) columns.set(name, blanked(values, rows));
  }
  const mended = { ...table, columns };
  if (aside.size === 0) return mended;
  return withRows(
    mended,
    Array.from({ length: table.rowCount }, (_, row) => row).filter((row) => !aside.has(row)),
  );
}

/** Runs every cross-row rule over the tables; each sees what the ones before it left. Replaces tables in place. */
export function applyRules(
  tables: Map<TableName, Table>,
  house: House,
  now: number | null,
  log: ProblemLog,
  rules: readonly Rule[] = allRules,
): void {
  for (const rule of rules) {
    const byTable = new Map<TableName, RuleFault[]>();
    for (const fault of rule({ house, tables, now })) {
      const faults = byTable.get(fault.table);
      if (faults) faults.push(fault);
      else byTable.set(fault.table, [fault]);
    }
    for (const [name, faults] of byTable) tables.set(name, applied(tables.get(name) as Table, faults, log));
  }
}
