import { median } from "../../analysis/summary.ts";
import type { SteepGerminationResult, SteepRun } from "../steepGerminationResult.ts";

/**
 * A steep should end with more than 80 % of the kernels chitted: a Canadian technical guide on malting barley, chapter on
 * malting, p. 27 (its text was read); written for barley.
 */
const LOW_CHITTED_PERCENT = 80;

/** How many kernels had chitted at steep-out, and the batches in which few had; null where none was counted. */
export function chittedOf(steeps: readonly SteepRun[]): SteepGerminationResult["chitted"] {
  const counted = steeps.filter(({ chittedPercent }) => chittedPercent !== null);
  if (counted.length === 0) return null;
  return {
    batches: counted.length,
    medianPercent: median(counted.map(({ chittedPercent }) => chittedPercent as number)),
    below: counted.flatMap(({ run, chittedPercent }) =>
      (chittedPercent as number) < LOW_CHITTED_PERCENT ? [run] : [],
    ),
    lowPercent: LOW_CHITTED_PERCENT,
  };
}
