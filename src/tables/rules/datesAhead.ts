import { insideName } from "../insideName.ts";
import { declarationOf } from "../tableDeclarations.ts";
import { numbersOf } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

const MS_A_DAY = 86_400_000;

/** Dates that are still to come, but for the day an order is due. Kept, with a note; needs a clock from the caller. */
export const datesAhead: Rule = ({ tables, now }) => {
  if (now === null) return [];
  const faults: RuleFault[] = [];
  for (const table of tables.values()) {
    for (const column of declarationOf(table.name).columns) {
      const name = insideName(column);
      if ((column.kind !== "instant" && column.kind !== "date") || name === "due_on") continue;
      for (const [row, at] of numbersOf(table, name).entries()) {
        if (!(at > now + MS_A_DAY)) continue;
        faults.push({
          table: table.name,
          row,
          columns: [name],
          rule: "date-ahead",
          message: "The date is still to come.",
          hint: "Look up the year, or the clock of the logger.",
          effect: "note",
        });
      }
    }
  }
  return faults;
};
