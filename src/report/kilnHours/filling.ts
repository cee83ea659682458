import { median } from "../../analysis/summary.ts";
import type { Filling } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";

/** A fan is put on a thermostat, or taken off it, from one load to the next: only the latest loads say how it runs now. */
const LATEST_LOADS = 5;

function medianOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : median(known);
}

const ratio = (part: number | null, whole: number | null): number | null =>
  part !== null && whole !== null && whole > 0 ? part / whole : null;

/**
 * How this house fills its kiln: medians over the loads that logged each part. They look at no hours, so that an
 * estimate made with them has not seen its own answer.
 */
export function usualFilling(
  loads: readonly LoadRow[],
  targetMoisturePercent: number,
  pressurePascals: number,
): Filling {
  const greenPerGrain = medianOf(loads.map((load) => ratio(load.greenLoadKilograms, load.grainInKilograms)));
  const greenMoisturePercent = medianOf(loads.map((load) => load.greenMoisturePercent));
  const usualGain =
    greenPerGrain === null || greenMoisturePercent === null ? null : { greenPerGrain, greenMoisturePercent };
  const fanShares = loads.map(({ fanShareOfHold }) => fanShareOfHold ?? 1).slice(-LATEST_LOADS);
  return {
    fanShareOfHold: fanShares.length === 0 ? 1 : median(fanShares),
    greenKilogramsPerMetre: medianOf(loads.map((load) => ratio(load.greenLoadKilograms, load.bedDepthMetres))),
    usualGain,
    dryingSetCelsius: medianOf(loads.map((load) => load.dryingSetCelsius)),
    targetMoisturePercent,
    pressurePascals,
  };
}
