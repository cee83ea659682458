import { rowsBy } from "./columns.ts";
import type { Rule } from "./rule.ts";

/** A steep of a lot that grain-lots.csv does not name: the run is kept, its grain and variety are not known. */
export const unknownLots: Rule = ({ tables }) => {
  const lots = tables.get("grain-lots");
  if (!lots) return [];
  const known = rowsBy(lots, "lot");
  return [...rowsBy(tables.get("steeping"), "lot")]
    .filter(([lot]) => !known.has(lot))
    .flatMap(([lot, rows]) =>
      rows.map((row) => ({
        table: "steeping" as const,
        row,
        columns: ["lot"],
        rule: "unknown-lot",
        message: `grain-lots.csv has no lot ${lot}, so that the variety of this run is not known; the row is kept.`,
        hint: "Add the lot there, or mend its name here.",
        effect: "note" as const,
      })),
    );
};
