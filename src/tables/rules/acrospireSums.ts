import type { TableName } from "../declarations.ts";
import { acrospireColumns } from "../declareGrowth.ts";
import { numbersOf } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

const counted: readonly TableName[] = ["germination", "acrospire-counts"];
const names = acrospireColumns.map(({ stem }) => stem);

/**
 * Acrospire counts that do not add up: some classes blank while others are filled, or all of them 0. Shares cannot be
 * made of either, so the whole count is blanked.
 */
export const acrospireSums: Rule = ({ tables }) => {
  const faults: RuleFault[] = [];
  for (const name of counted) {
    const table = tables.get(name);
    if (!table) continue;
    const columns = names.map((column) => numbersOf(table, column));
    for (let row = 0; row < table.rowCount; row++) {
      const counts = columns.map((values) => values[row] as number);
      const filled = names.filter((_, i) => !Number.isNaN(counts[i]));
      if (filled.length === 0) continue;
      const blank = names.filter((_, i) => Number.isNaN(counts[i]));
      const total = counts.reduce((sum, count) => sum + (count || 0), 0);
      if (blank.length > 0) {
        faults.push({
          table: name,
          row,
          columns: filled,
          rule: "acrospire-incomplete",
          message: `The acrospire count has no number for ${blank.join(", ")}; the whole count is left out.`,
          hint: "Write 0 for a class in which no kernel was found: blank means not counted.",
          effect: "value-blanked",
        });
      } else if (total === 0) {
        faults.push({
          table: name,
          row,
          columns: filled,
          rule: "acrospire-all-zero",
          message: "Every class of the acrospire count is 0: no kernel was counted.",
          hint: "Leave all six blank where no count was made.",
          effect: "value-blanked",
        });
      }
    }
  }
  return faults;
};
