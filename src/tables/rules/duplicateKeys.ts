import type { TableName } from "../declarations.ts";
import { textsOf, whereIs } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** Tables in which a name may stand once only, and what the name is. */
const keys: readonly { readonly table: TableName; readonly columns: readonly string[]; readonly what: string }[] = [
  { table: "grain-lots", columns: ["lot"], what: "lot" },
  { table: "customers", columns: ["customer"], what: "customer" },
  { table: "targets", columns: ["variety", "measure"], what: "target" },
];

/** Two rows that say different things of one lot, customer or target: the first stays, the others are set aside. */
export const duplicateKeys: Rule = ({ tables }) => {
  const faults: RuleFault[] = [];
  for (const { table: name, columns, what } of keys) {
    const table = tables.get(name);
    if (!table) continue;
    const parts = columns.map((column) => textsOf(table, column));
    const first = new Map<string, number>();
    for (let row = 0; row < table.rowCount; row++) {
      const words = parts.map((values) => values[row]);
      const key = JSON.stringify(words);
      const earlier = first.get(key);
      if (earlier === undefined) {
        first.set(key, row);
        continue;
      }
      faults.push({
        table: name,
        row,
        columns,
        rule: `duplicate-${what}`,
        message: `The ${what} ${words.join(", ")} stands on ${whereIs(table, earlier)} with other values; that row is kept.`,
        hint: `Keep one row for each ${what}, or give this one a name of its own.`,
        effect: "row-set-aside",
      });
    }
  }
  return faults;
};
