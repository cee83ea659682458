import { houseMeasures } from "../declareHouse.ts";
import { fileNames } from "../insideName.ts";
import { declarationOf } from "../tableDeclarations.ts";
import { numbersOf, textsOf } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** Targets whose low lies above high, or whose target lies outside both (blanked), and measures that nobody knows. */
export const targetsOutOfOrder: Rule = ({ tables }) => {
  const targets = tables.get("targets");
  if (!targets) return [];
  const lab = declarationOf("lab").columns.filter(({ kind }) => kind === "number");
  const known = new Set([...houseMeasures, ...lab.flatMap((column) => fileNames(column).map(({ name }) => name))]);
  const [low, target, high] = ["low", "target", "high"].map((name) => numbersOf(targets, name)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const measures = textsOf(targets, "measure");
  const faults: RuleFault[] = [];
  const add = (row: number, columns: readonly string[], rule: string, message: string, hint: string): void => {
    faults.push({
      table: "targets",
      row,
      columns,
      rule,
      message,
      hint,
      effect: columns[0] === "measure" ? "note" : "value-blanked",
    });
  };
  for (let row = 0; row < targets.rowCount; row++) {
    const [l, t, h] = [low[row] as number, target[row] as number, high[row] as number];
    if (l > h) {
      add(
        row,
        ["low", "high"],
        "target-low-over-high",
        `Low ${l} lies above high ${h}.`,
        "Exchange them, or look them up.",
      );
    } else if (t < l || t > h) {
      add(row, ["target"], "target-outside-limits", `Target ${t} lies outside its limits.`, "Look up all three.");
    }
    const measure = measures[row] as string;
    if (!known.has(measure)) {
      add(
        row,
        ["measure"],
        "unknown-measure",
        `There is no measure called ${measure}; the row is kept and used nowhere.`,
        "Name one of data/README.md, with the unit for colour and diastatic power.",
      );
    }
  }
  return faults;
};
