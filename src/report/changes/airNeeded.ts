import { median } from "../../analysis/summary.ts";
import { dryAirNeeded } from "../kilnHours/modelRow.ts";
import type { Filling } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";
import type { AirNeeded } from "./comparedRow.ts";

/** Where fewer rows than this share know the air that they need, humidity stands in. */
const FEWEST_SHARE = 0.8;

/** @param byDryingAir whether the drying-air model is the better one on Kiln hours */
export function airNeededBook(loads: readonly LoadRow[], filling: Filling, byDryingAir: boolean): AirNeeded {
  if (!byDryingAir) return () => null;
  const middle = (of: (load: LoadRow) => number | null): number | null => {
    const logged = loads.map(of).filter((value) => value !== null);
    return logged.length === 0 ? null : median(logged);
  };
  const usual = {
    greenLoadKilograms: middle((load) => load.greenLoadKilograms),
    greenMoisturePercent: filling.usualGain?.greenMoisturePercent ?? null,
    grainInKilograms: middle((load) => load.grainInKilograms),
  };
  // A wet bulb takes a search for each load, and many changes ask for the same.
  const known = new Map<string, Map<LoadRow, number | null>>();
  return (rows, altered, touchesWater) => {
    const [bySetPoint, byFan] = [altered !== "drying_set", altered !== "fan_set"];
    const key = [bySetPoint, byFan, touchesWater].join();
    const found = known.get(key) ?? new Map<LoadRow, number | null>();
    known.set(key, found);
    const needed = rows.map(({ model }) => {
      if (model === null) return null;
      const { load, air, dryAirNeededTonnes } = model;
      if (bySetPoint && byFan && !touchesWater) return dryAirNeededTonnes;
      const before = found.get(load);
      if (before !== undefined) return before;
      const filled: LoadRow = touchesWater ? { ...load, ...usual } : load;
      const blown: LoadRow = byFan ? filled : { ...filled, fanShareOfHold: null };
      const tonnes = dryAirNeeded(blown, air, bySetPoint ? load.dryingSetCelsius : null, filling)?.tonnes ?? null;
      found.set(load, tonnes);
      return tonnes;
    });
    const logged = needed.filter((tonnes) => tonnes !== null).length;
    return logged < FEWEST_SHARE * rows.length || logged === 0 ? null : needed;
  };
}
