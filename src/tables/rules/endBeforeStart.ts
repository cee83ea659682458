import type { TableName } from "../declarations.ts";
import { numbersOf } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** The moments of each stage in the order in which they must come; the first is the one a row cannot do without. */
const orders: readonly { readonly table: TableName; readonly columns: readonly string[] }[] = [
  { table: "steeping", columns: ["started_at", "ended_at"] },
  { table: "germination", columns: ["started_at", "ended_at"] },
  { table: "kilning", columns: ["loaded_at", "cure_started_at", "heat_off_at", "unloaded_at"] },
];

const said = (name: string): string => name.replace(/_at$/, "").replaceAll("_", " ");

/**
 * A stage that ends before (or as) it begins. Of the moments that contradict each other those that the row can do
 * without are blanked, all of them: nothing says which is the wrong one.
 */
export const endBeforeStart: Rule = ({ tables }) => {
  const faults: RuleFault[] = [];
  for (const { table: name, columns } of orders) {
    const table = tables.get(name);
    if (!table) continue;
    const moments = columns.map((column) => numbersOf(table, column));
    const last = columns.length - 1;
    for (let row = 0; row < table.rowCount; row++) {
      const at = moments.map((values) => values[row] as number);
      const wrong = new Map<number, number>();
      for (let later = 1; later < at.length; later++) {
        for (let earlier = 0; earlier < later; earlier++) {
          const gap = (at[later] as number) - (at[earlier] as number);
          // The cure may start, or the heat go off, at the very moment of a neighbour; a whole stage takes time.
          if (!(gap < 0 || (gap === 0 && earlier === 0 && later === last))) continue;
          wrong.set(later, earlier);
          if (earlier > 0) wrong.set(earlier, later);
        }
      }
      for (const [index, other] of wrong) {
        faults.push({
          table: name,
          row,
          columns: [columns[index] as string],
          rule: "end-before-start",
          message: `${said(columns[Math.max(index, other)] as string)} is not after ${said(columns[Math.min(index, other)] as string)}.`,
          hint: "Look up both times; a run over midnight needs the next day's date.",
          effect: "value-blanked",
        });
      }
    }
  }
  return faults;
};
