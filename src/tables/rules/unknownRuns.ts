import type { TableName } from "../declarations.ts";
import { rowsBy } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

const followers: readonly TableName[] = [
  "germination",
  "acrospire-counts",
  "kilning",
  "moisture-samples",
  "lab",
  "deliveries",
];

/** A run named by a later log and not by the steeping log (or, without one, by no stage): kept, but it hangs in the air. */
export const unknownRuns: Rule = ({ tables }) => {
  const steeping = tables.get("steeping");
  const stages = steeping ? [steeping] : [tables.get("germination"), tables.get("kilning")];
  const known = new Set(stages.flatMap((table) => [...rowsBy(table, "run").keys()]));
  if (known.size === 0) return [];
  const faults: RuleFault[] = [];
  for (const name of followers) {
    for (const [run, rows] of rowsBy(tables.get(name), "run")) {
      if (known.has(run)) continue;
      for (const row of rows) {
        faults.push({
          table: name,
          row,
          columns: ["run"],
          rule: "unknown-run",
          message: `${steeping ? "steeping.csv has no run" : "No stage of the logs has a run"} ${run}; the row is kept, with nothing before it.`,
          hint: "Mend the run's name, or log its steep.",
          effect: "note",
        });
      }
    }
  }
  return faults;
};
