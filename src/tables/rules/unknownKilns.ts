import type { TableName } from "../declarations.ts";
import { textsOf } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

const naming: readonly TableName[] = ["kilning", "readings", "logger-checks"];

/** A kiln that house.toml does not list (where it lists any): kept, and noted once a table. */
export const unknownKilns: Rule = ({ house, tables }) => {
  if (house.kilns.length === 0) return [];
  const known = new Set(house.kilns.map(({ id }) => id));
  const faults: RuleFault[] = [];
  for (const name of naming) {
    const table = tables.get(name);
    if (!table) continue;
    const seen = new Set<string>();
    for (const [row, kiln] of textsOf(table, "kiln").entries()) {
      if (kiln === null || known.has(kiln) || seen.has(kiln)) continue;
      seen.add(kiln);
      faults.push({
        table: name,
        row,
        columns: ["kiln"],
        rule: "unknown-kiln",
        message: `house.toml lists no kiln ${kiln}; its rows are kept as a kiln of their own.`,
        hint: "Add it there under [[kilns]], or mend the name here: upper and lower case count.",
        effect: "note",
      });
    }
  }
  return faults;
};
