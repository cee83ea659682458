import { limitsOfAgreement } from "../../analysis/limitsOfAgreement.ts";
import { mean } from "../../analysis/summary.ts";
import type { SteepBias, SteepRun } from "../steepGerminationResult.ts";
import type { TankRow } from "./floorRows.ts";
import { gainedPercent } from "./steeps.ts";

/** Fewer batches say nothing of how far the two differ. */
export const FEWEST_PAIRS = 5;

/**
 * Measured steep-out moisture less that from the gain in mass, points: tank by tank where both exist, the tanks of a batch
 * averaged so that a batch counts once. Null below {@link FEWEST_PAIRS} batches.
 */
export function steepBias(
  steeps: readonly SteepRun[],
  tanksOf: ReadonlyMap<string, readonly TankRow[]>,
): SteepBias | null {
  const differences = steeps.flatMap(({ run }) => {
    const own = (tanksOf.get(run) ?? []).flatMap((tank) => {
      const gained = gainedPercent(tank);
      return gained === null || tank.measuredPercent === null ? [] : [tank.measuredPercent - gained];
    });
    return own.length === 0 ? [] : [{ run, points: mean(own) }];
  });
  if (differences.length < FEWEST_PAIRS) return null;
  const { bias, limits } = limitsOfAgreement(differences.map(({ points }) => points));
  const clear = bias.low > 0 || bias.high < 0;
  return { batches: differences.length, meanPoints: bias, limits, clear, differences };
}
