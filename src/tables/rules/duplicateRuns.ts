import type { TableName } from "../declarations.ts";
import { numbersOf, rowsBy, textsOf, whereIs } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** Beyond this many days, rows of one stage cannot be one batch: a limit of ours, wide of any steep, bed or split load. */
const ONE_BATCH_DAYS = 14;

const stages: readonly { readonly table: TableName; readonly start: string; readonly vessel: string }[] = [
  { table: "steeping", start: "started_at", vessel: "tank" },
  { table: "germination", start: "started_at", vessel: "bed" },
  { table: "kilning", start: "loaded_at", vessel: "kiln" },
];

/**
 * One run name on rows that cannot be one batch. Weeks apart, the later rows are set aside: joined, two batches would
 * make one that never was. In the same vessel at the same moment they are kept, masses adding up, with a note.
 */
export const duplicateRuns: Rule = ({ tables }) => {
  const faults: RuleFault[] = [];
  for (const { table: name, start, vessel } of stages) {
    const table = tables.get(name);
    if (!table) continue;
    const starts = numbersOf(table, start);
    const vessels = textsOf(table, vessel);
    for (const [run, rows] of rowsBy(table, "run")) {
      const first = rows.reduce((a, b) => ((starts[b] as number) < (starts[a] as number) ? b : a));
      for (const [i, row] of rows.entries()) {
        const days = ((starts[row] as number) - (starts[first] as number)) / 86_400_000;
        if (days > ONE_BATCH_DAYS) {
          faults.push({
            table: name,
            row,
            columns: ["run"],
            rule: "duplicate-run",
            message: `Run ${run} began ${Math.round(days)} days earlier on ${whereIs(table, first)}; that row is kept as the run of this name.`,
            hint: "Give every batch a name of its own, with the year in it where numbers begin again.",
            effect: "row-set-aside",
          });
          continue;
        }
        const twin = rows.slice(0, i).find((other) => starts[other] === starts[row] && vessels[other] === vessels[row]);
        if (twin === undefined || vessels[row] === null) continue;
        faults.push({
          table: name,
          row,
          columns: ["run"],
          rule: "run-twice",
          message: `Run ${run} stands twice in ${vessel} ${vessels[row]} at the same time (${whereIs(table, twin)}); both rows are kept and their masses add up.`,
          hint: "If the second row corrects the first, take the first one out.",
          effect: "note",
        });
      }
    }
  }
  return faults;
};
