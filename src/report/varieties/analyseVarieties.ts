import type { VarietiesResult } from "../varietiesResult.ts";

/** Consistency of each variety, and where its spread starts. */
export function analyseVarieties(): VarietiesResult {
  return { scores: [], details: [], backTest: null, periods: [], tolerancesFrom: [], tooLittle: "Not worked out yet." };
}
