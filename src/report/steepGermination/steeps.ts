import { steepOutMoisturePercent } from "../../malting/massBalance.ts";
import type { RunRow } from "../runRow.ts";
import type { SteepRun } from "../steepGerminationResult.ts";
import { nearestTarget, type TargetRow } from "../targetRow.ts";
import type { TankRow } from "./floorRows.ts";

const HOUR = 3_600_000;

/** A tank's steep-out moisture from its gain in mass; null where a mass is missing or cannot be. */
export function gainedPercent(tank: TankRow): number | null {
  return fromMasses(tank.grainInKilograms, tank.grainMoisturePercent, tank.steepOutKilograms);
}

function fromMasses(grainIn: number | null, moisture: number | null, steepOut: number | null): number | null {
  if (grainIn === null || moisture === null || steepOut === null || grainIn <= 0 || moisture >= 100) return null;
  return steepOut * 100 > grainIn * (100 - moisture) ? steepOutMoisturePercent(grainIn, moisture, steepOut) : null;
}

/** The mean of the tanks that were measured, weighted by mass where all of those were weighed. */
function measuredOf(tanks: readonly TankRow[]): number | null {
  const measured = tanks.filter(({ measuredPercent }) => measuredPercent !== null);
  if (measured.length === 0) return null;
  const weighed = measured.every(({ steepOutKilograms }) => (steepOutKilograms ?? 0) > 0);
  let sum = 0;
  let weights = 0;
  for (const { measuredPercent, steepOutKilograms } of measured) {
    const weight = weighed ? (steepOutKilograms as number) : 1;
    sum += weight * (measuredPercent as number);
    weights += weight;
  }
  return sum / weights;
}

/** The steeps of these batches, earliest first, each number with how it was come by. */
export function steepsOf(
  runs: readonly RunRow[],
  tanksOf: ReadonlyMap<string, readonly TankRow[]>,
  targets: readonly TargetRow[],
): readonly SteepRun[] {
  const steeps = runs.flatMap((row): SteepRun[] => {
    if (row.steepStartedAt === null) return [];
    const target = nearestTarget(targets, "steep_out_moisture_pct", row.variety, row.grain);
    const measuredPercent = measuredOf(tanksOf.get(row.run) ?? []);
    const fromMassGainPercent = fromMasses(row.grainInKilograms, row.grainMoisturePercent, row.steepOutKilograms);
    return [
      {
        run: row.run,
        variety: row.variety,
        lot: row.lot,
        startedAt: row.steepStartedAt,
        waterCelsius: row.steepWaterCelsius,
        wetHours: row.steepWetHours,
        airRestHours: row.steepAirRestHours,
        hours: row.steepEndedAt === null ? null : (row.steepEndedAt - row.steepStartedAt) / HOUR,
        grainMoisturePercent: row.grainMoisturePercent,
        measuredPercent,
        fromMassGainPercent,
        steepOutPercent: measuredPercent ?? fromMassGainPercent,
        basis: measuredPercent !== null ? "measured" : fromMassGainPercent !== null ? "from mass gain" : null,
        chittedPercent: row.chittedPercent,
        target: target && { low: target.low, target: target.target, high: target.high },
      },
    ];
  });
  return steeps.sort((a, b) => a.startedAt - b.startedAt || (a.run < b.run ? -1 : 1));
}
