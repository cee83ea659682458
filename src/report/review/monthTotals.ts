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

/** Batches that were unloaded in a month; earliest first. */
export function runsOfMonth(runs: readonly RunRow[], { from, before }: Month): readonly RunRow[] {
  return runs
    .filter(({ unloadedAt }) => unloadedAt !== null && unloadedAt >= from && unloadedAt < before)
    .toSorted((a, b) => (a.unloadedAt ?? 0) - (b.unloadedAt ?? 0));
}

/**
 * What a month came to. Hours belong to a load: batches that shared one are counted once. Energy is a batch's own share where
 * it was logged.
 */
export function monthTotals(runs: readonly RunRow[], month: Month): MonthTotals {
  const own = runsOfMonth(runs, month);
  const loads = new Map(own.map((row) => [row.load ?? row.run, row.kilnHours]));
  const grainIn = sumOf(own.map(({ grainInKilograms }) => grainInKilograms));
  const maltOut = sumOf(own.map(({ maltKilograms }) => maltKilograms));
  const hours = sumOf([...loads.values()]);
  const energy = sumOf(own.map(({ energyKilowattHours }) => energyKilowattHours));
  return {
    month: month.name,
    batches: own.length,
    grainInKilograms: grainIn.total,
    maltOutKilograms: maltOut.total,
    kilnHours: hours.total,
    energyKilowattHours: energy.total,
    logged: { grainIn: grainIn.of, maltOut: maltOut.of, kilnHours: hours.of, energy: energy.of },
  };
}
