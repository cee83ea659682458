import type { LoadRow } from "../loadRow.ts";
import type { MonthTotals } from "../reviewResult.ts";
import type { RunRow } from "../runRow.ts";
import type { Month } from "./months.ts";

interface Sum {
  readonly total: number | null;
  readonly of: number;
}

function sumOf(values: readonly (number | null)[]): Sum {
  const known = values.filter((value) => value !== null);
  return { total: known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0), of: known.length };
}

const isUnloadedIn =
  ({ from, before }: Month) =>
  ({ unloadedAt }: Pick<RunRow, "unloadedAt">): boolean =>
    unloadedAt !== null && unloadedAt >= from && unloadedAt < before;

/** Batches that were unloaded in a month; earliest first. */
export function runsOfMonth(runs: readonly RunRow[], month: Month): readonly RunRow[] {
  return runs.filter(isUnloadedIn(month)).toSorted((a, b) => (a.unloadedAt ?? 0) - (b.unloadedAt ?? 0));
}

/**
 * What a month came to. Hours and energy belong to a load: they are counted once where batches shared it, and all of them
 * where a batch was split over several.
 */
export function monthTotals(runs: readonly RunRow[], loads: readonly LoadRow[], month: Month): MonthTotals {
  const own = runsOfMonth(runs, month);
  const fired = loads.filter(isUnloadedIn(month));
  const grainIn = sumOf(own.map(({ grainInKilograms }) => grainInKilograms));
  const maltOut = sumOf(own.map(({ maltKilograms }) => maltKilograms));
  const hours = sumOf(fired.map(({ kilnHours }) => kilnHours));
  const energy = sumOf(fired.map(({ energyKilowattHours }) => energyKilowattHours));
  return {
    month: month.name,
    batches: own.length,
    loads: fired.length,
    grainInKilograms: grainIn.total,
    maltOutKilograms: maltOut.total,
    kilnHours: hours.total,
    energyKilowattHours: energy.total,
    logged: { grainIn: grainIn.of, maltOut: maltOut.of, kilnHours: hours.of, energy: energy.of },
  };
}
