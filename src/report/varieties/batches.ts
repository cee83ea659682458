import type { KilnHoursResult } from "../kilnHoursResult.ts";
import type { RunRow } from "../runRow.ts";
import type { LabRow } from "../varietiesResult.ts";
import { measuredRuns } from "../yieldMoisture/measuredRuns.ts";
import { HOURS_OVER } from "./tolerances.ts";

/** A batch off the kiln, with every measure that a tolerance may name. */
export interface Batch {
  readonly row: RunRow;
  readonly variety: string;
  /** Unloaded, milliseconds UTC. */
  readonly at: number;
  /** In the measure's own unit; null where not recorded. */
  readonly valueOf: (measure: string) => number | null;
}

/** Hours beyond what the loads before it let expect, by run; loads without such an estimate are not in it. */
export function hoursOverExpected({ kilnHours }: KilnHoursResult): ReadonlyMap<string, number> {
  const { best, dryingAir, humidityDepth } = kilnHours;
  const model = best === "drying-air" ? dryingAir : humidityDepth;
  const over = new Map<string, number>();
  for (const { runs, hours, oneStepAhead } of model?.loads ?? []) {
    if (oneStepAhead === null) continue;
    for (const run of runs) over.set(run, hours - oneStepAhead.estimate);
  }
  return over;
}

/**
 * The results of each run: of the method set that most certificates name, since results of different ones are never
 * mixed, and of each result the latest.
 */
export function labByRun(lab: readonly LabRow[]): ReadonlyMap<string, Readonly<Record<string, number | null>>> {
  const counts = new Map<string | null, number>();
  for (const { methodSet } of lab) counts.set(methodSet, (counts.get(methodSet) ?? 0) + 1);
  let usual: string | null = null;
  for (const [methodSet, count] of counts) if (count > (counts.get(usual) ?? 0)) usual = methodSet;
  const byRun = new Map<string, Record<string, number | null>>();
  for (const { run, methodSet, values } of lab) {
    if (methodSet !== usual) continue;
    const known = byRun.get(run) ?? {};
    for (const [measure, value] of Object.entries(values)) if (value !== null) known[measure] = value;
    byRun.set(run, known);
  }
  return byRun;
}

const ofRow: Readonly<Record<string, (row: RunRow) => number | null>> = {
  dry_yield_pct: (row) => row.dryMatterYieldPercent,
  steep_out_moisture_pct: (row) => row.steepOutMoisturePercent,
  acrospire_mean: (row) => row.acrospireMean,
  acrospire_overgrown_pct: (row) => row.acrospireOvergrownPercent,
};

/** The batches that are off the kiln and of a known variety, in the order in which the kiln was emptied. */
export function batchesOf(
  runs: readonly RunRow[],
  about: {
    readonly samples: ReadonlyMap<string, readonly number[]>;
    readonly hoursOver: ReadonlyMap<string, number>;
    readonly lab: ReadonlyMap<string, Readonly<Record<string, number | null>>>;
    readonly without: ReadonlySet<string>;
  },
): readonly Batch[] {
  const { samples, hoursOver, lab, without } = about;
  const moistures = new Map(
    measuredRuns(runs, "final_moisture_pct", samples).measured.map(({ row, value }) => [row.run, value] as const),
  );
  const valueIn = (row: RunRow, measure: string): number | null => {
    if (measure === "final_moisture_pct") return moistures.get(row.run) ?? null;
    if (measure === HOURS_OVER) return hoursOver.get(row.run) ?? null;
    const own = ofRow[measure];
    return own === undefined ? (lab.get(row.run)?.[measure] ?? null) : own(row);
  };
  const batches = runs.flatMap((row): Batch[] => {
    const { variety, unloadedAt: at, run } = row;
    if (variety === null || at === null || without.has(run)) return [];
    return [{ row, variety, at, valueOf: (measure) => valueIn(row, measure) }];
  });
  return batches.sort((a, b) => a.at - b.at || (a.row.run < b.row.run ? -1 : 1));
}
