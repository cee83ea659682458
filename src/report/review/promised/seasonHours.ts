import type { Interval } from "../../../analysis/regressionFit.ts";
import { mean } from "../../../analysis/summary.ts";
import { expectHours } from "../../kilnHours/expectHours.ts";
import type { KilnHoursResult } from "../../kilnHoursResult.ts";
import type { LoadRow } from "../../loadRow.ts";

const DAY = 86_400_000;
const YEAR = 365.25 * DAY;

/** Loads of the same weeks in earlier years: their air is the best guess at what is coming. */
function sameSeason(loads: readonly LoadRow[], from: number, to: number): readonly LoadRow[] {
  return loads.filter(({ loadedAt }) => {
    for (let back = YEAR; back < 12 * YEAR; back += YEAR) {
      if (loadedAt >= from - back && loadedAt < to - back) return true;
    }
    return false;
  });
}

/**
 * Hours a load in the coming weeks' usual air, at the house's usual bed: the middle, with the planning interval of a single
 * load. Null without a model, or without loads of that season and of the last weeks.
 */
export function seasonHours(
  result: KilnHoursResult,
  loads: readonly LoadRow[],
  from: number,
  to: number,
): Interval | null {
  const { usual } = result;
  if (usual === null) return null;
  const before = sameSeason(loads, from, to);
  const like = before.length >= 3 ? before : loads.slice(-6);
  const airs = like.flatMap(({ airOverLoad, airAtLoading }) => airOverLoad ?? airAtLoading ?? []);
  if (airs.length === 0) return null;
  const temperatures = airs.flatMap(({ celsius }) => celsius ?? []);
  const expected = expectHours(result.kilnHours, {
    relativeHumidityPercent: mean(airs.map(({ relativeHumidityPercent }) => relativeHumidityPercent)),
    celsius: temperatures.length === 0 ? usual.celsius : mean(temperatures),
    bedDepthMetres: usual.bedDepthMetres,
    greenLoadKilograms: usual.greenLoadKilograms,
    greenMoisturePercent: null,
    grainInKilograms: null,
    dryingSetCelsius: usual.dryingSetCelsius,
    fanShareOfHold: null,
  });
  if (expected === null || expected.outsideExperience) return null;
  const { estimate, low, high } = expected.prediction;
  return { estimate, low, high };
}
