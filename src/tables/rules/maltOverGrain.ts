import { numbersOf, rowsBy, sumOver } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** More malt out than grain in, over the whole run: the malt masses are blanked, and with them the yield. */
export const maltOverGrain: Rule = ({ tables }) => {
  const steeping = tables.get("steeping");
  const kilning = tables.get("kilning");
  if (!steeping || !kilning) return [];
  const grain = numbersOf(steeping, "grain_in_kg");
  const steeps = rowsBy(steeping, "run");
  const faults: RuleFault[] = [];
  for (const [run, rows] of rowsBy(kilning, "run")) {
    const grainIn = sumOver(grain, steeps.get(run) ?? []);
    if (grainIn === null) continue;
    for (const column of ["malt_out_kg", "cleaned_out_kg"]) {
      const out = numbersOf(kilning, column);
      // What is logged so far is already too much where it exceeds the grain, if some rows are still blank.
      const logged = rows.filter((row) => !Number.isNaN(out[row]));
      const maltOut = sumOver(out, logged);
      if (maltOut === null || maltOut <= grainIn) continue;
      for (const row of logged) {
        faults.push({
          table: "kilning",
          row,
          columns: [column],
          rule: "malt-over-grain",
          message: `Run ${run} gave ${maltOut.toFixed(0)} kg of malt from ${grainIn.toFixed(0)} kg of grain.`,
          hint: "Look up both weighings and their units; a run over several tanks needs a steeping row for each.",
          effect: "value-blanked",
        });
      }
    }
  }
  return faults;
};
