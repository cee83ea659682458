import type { VarietiesResult } from "../../report/varietiesResult.ts";
import { listed } from "../counted.ts";
import type { Sentence } from "../sentence.ts";

const WORDS = { "targets.csv": "targets.csv", "house.toml": "[tolerances] in house.toml" } as const;

/** Where the tolerances come from. Empty where there is none. */
export function toleranceSentence({ tolerancesFrom }: VarietiesResult): Sentence {
  if (tolerancesFrom.length === 0) return [];
  return [
    `Tolerances come from ${listed(tolerancesFrom.map((from) => WORDS[from]))}: they are the house’s own, and the scores follow them.`,
  ];
}
