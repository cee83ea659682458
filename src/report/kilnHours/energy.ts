import { median } from "../../analysis/summary.ts";
import { latentHeatKilowattHoursPerKilogram } from "../../malting/latentHeat.ts";
import type { EnergySummary, LoadEnergy } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";

const FEWEST_LOADS = 5;

/**
 * Energy a load and a kilogram of water removed, beside the least that evaporation alone takes at the drying set point.
 *
 * @returns null where fewer than five loads logged energy and what the water balance needs
 */
export function energySummary(loads: readonly LoadRow[], dryingSetCelsius: number | null): EnergySummary | null {
  const known: LoadEnergy[] = loads.flatMap((load) => {
    const { energyKilowattHours: kilowattHours, waterRemovedKilograms } = load;
    if (kilowattHours === null || waterRemovedKilograms === null || waterRemovedKilograms <= 0) return [];
    return [
      {
        load: load.load,
        loadedAt: load.loadedAt,
        kilowattHours,
        waterRemovedKilograms,
        kilowattHoursPerKilogramWater: kilowattHours / waterRemovedKilograms,
      },
    ];
  });
  if (known.length < FEWEST_LOADS || dryingSetCelsius === null) return null;
  return {
    loads: known,
    medianKilowattHours: median(known.map((load) => load.kilowattHours)),
    medianPerKilogramWater: median(known.map((load) => load.kilowattHoursPerKilogramWater)),
    latentHeatFloor: latentHeatKilowattHoursPerKilogram(dryingSetCelsius),
    floorCelsius: dryingSetCelsius,
  };
}
