import type { TableName } from "../declarations.ts";
import type { Table } from "../table.ts";
import { whereIs } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** Two samples may well have the same moisture; readings and weather are put together by their own rule. */
const MAY_REPEAT: ReadonlySet<TableName> = new Set(["moisture-samples", "readings", "weather"]);

function repeatsIn(table: Table): readonly RuleFault[] {
  const columns = [...table.columns.values(), ...table.unknownColumns.values()];
  const first = new Map<string, number>();
  const faults: RuleFault[] = [];
  for (let row = 0; row < table.rowCount; row++) {
    const key = JSON.stringify(columns.map((values) => values[row] ?? null));
    const earlier = first.get(key);
    if (earlier === undefined) {
      first.set(key, row);
      continue;
    }
    faults.push({
      table: table.name,
      row,
      columns: [],
      rule: "repeated-row",
      message: `The row says word for word what ${whereIs(table, earlier)} says.`,
      hint: "Take one of the two out.",
      effect: "row-set-aside",
    });
  }
  return faults;
}

/** Rows typed or pasted twice: the first stays, the others are set aside, so that no mass counts twice. */
export const repeatedRows: Rule = ({ tables }) =>
  [...tables.values()].filter(({ name }) => !MAY_REPEAT.has(name)).flatMap(repeatsIn);
