import type { ReviewFinding } from "../../report/reviewResult.ts";
import type { Sentence } from "../sentence.ts";

/** What a reader makes of a chance: words, with the number beside them. */
export function howSure({ chanceReal, facts }: Pick<ReviewFinding, "chanceReal" | "facts">): Sentence {
  const witnesses = new Set(facts.map(({ kind }) => kind)).size;
  const joint = witnesses > 1 ? `, shown in ${witnesses} places at once` : "";
  if (facts.every(({ kind }) => CERTAIN.has(kind))) return ["Read from the logs as they stand; no estimate."];
  if (chanceReal >= 0.99) return [`As good as certain${joint}.`];
  if (chanceReal >= 0.95) return [`Very likely real, some ${Math.round(100 * chanceReal)} in 100${joint}.`];
  return [`Likely real, some ${Math.round(100 * chanceReal)} in 100; the rest is chance${joint}.`];
}

/** Kinds that are counted, not estimated. */
const CERTAIN: ReadonlySet<string> = new Set(["logs", "logger", "power limit"]);
