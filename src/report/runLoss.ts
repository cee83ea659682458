import { type MaltingLoss, maltingLoss } from "../malting/massBalance.ts";
import type { RunRow } from "./runRow.ts";

/**
 * Where a batch's dry matter went: rootlets, and the rest by difference; null where a mass or a moisture is not logged.
 *
 * Where malt is weighed before its rootlets are taken off, the log's rootlets already came out of it. Rootlets are taken
 * to be as dry as the malt they fell from (common practice), since nobody measures them.
 */
export function runLoss(row: RunRow): MaltingLoss | null {
  const { grainInKilograms, grainMoisturePercent, maltKilograms, finalMoisturePercent, rootletsKilograms } = row;
  if (grainInKilograms === null || grainMoisturePercent === null) return null;
  if (maltKilograms === null || finalMoisturePercent === null || grainInKilograms <= 0) return null;
  const batch = { grainInKilograms, grainMoisturePercent, maltKilograms, maltMoisturePercent: finalMoisturePercent };
  const rootlets =
    rootletsKilograms === null ? null : { kilograms: rootletsKilograms, moisturePercent: finalMoisturePercent };
  return maltingLoss(batch, rootlets);
}
