import type { RunRow } from "../runRow.ts";
import type { SteepGerminationResult } from "../steepGerminationResult.ts";
import type { TargetRow } from "../targetRow.ts";
import { acrospireRuns } from "./acrospireRuns.ts";
import { bedsCompared } from "./bedsCompared.ts";
import { chittedOf } from "./chitted.ts";
import { countSizeOf } from "./countSize.ts";
import type { FloorRows } from "./floorRows.ts";
import { growthCounts } from "./growthCounts.ts";
import { growthModel } from "./growthModel.ts";
import { lengthOnTemperature } from "./lengthOnTemperature.ts";
import { steepBias } from "./steepBias.ts";
import { steepsOf } from "./steeps.ts";
import { uptakeModel } from "./uptake.ts";

export interface SteepGerminationOptions {
  readonly floor: FloorRows;
  readonly targets: readonly TargetRow[];
  /** Runs left out by hand: of the models and of the lists. */
  readonly without: ReadonlySet<string>;
}

/** Rows by their run, in the order given. */
function byRun<Row extends { readonly run: string }>(rows: readonly Row[]): ReadonlyMap<string, readonly Row[]> {
  const found = new Map<string, Row[]>();
  for (const row of rows) {
    const own = found.get(row.run);
    if (own) own.push(row);
    else found.set(row.run, [row]);
  }
  return found;
}

/**
 * Steep and germination floor of the batches that a view chooses: what the grain took up and in how many hours, how far
 * its acrospires grew and how evenly, and which bed lagged.
 *
 * @param runs of the view, in any order
 */
export function analyseSteepGermination(
  runs: readonly RunRow[],
  { floor, targets, without }: SteepGerminationOptions,
): SteepGerminationResult {
  const kept = runs.filter(({ run }) => !without.has(run));
  const tanksOf = byRun(floor.tanks);
  const bedsOf = byRun(floor.beds);
  const steeps = steepsOf(kept, tanksOf, targets);
  const bias = steepBias(steeps, tanksOf);
  const uptake = uptakeModel(steeps, bias);
  const acrospires = acrospireRuns(kept, bedsOf, targets);
  const growth = growthModel(growthCounts(kept, bedsOf, byRun(floor.counts)), acrospires);
  return {
    steeps,
    steepTooLittle: steeps.length === 0 ? "No steep is logged among these batches." : null,
    bias,
    uptake: typeof uptake === "string" ? null : uptake,
    uptakeTooLittle: typeof uptake === "string" ? uptake : null,
    chitted: chittedOf(steeps),
    acrospires,
    acrospireTooLittle: acrospires.length === 0 ? "No kernels were counted at unloading in these batches." : null,
    beds: bedsCompared(acrospires),
    growth: typeof growth === "string" ? null : growth,
    growthTooLittle: typeof growth === "string" ? growth : null,
    countSize: countSizeOf(acrospires),
    lengthOnTemperature: lengthOnTemperature(acrospires),
  };
}
