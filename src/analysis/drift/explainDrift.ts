import type { PredictorColumn } from "../factorisation.ts";
import type { FitFault } from "../fitFault.ts";
import type { Interval } from "../regressionFit.ts";
import { changeInterval } from "./changeRegion.ts";
import { type CompanionChange, companionChange } from "./companionChange.ts";
import type { DriftModelName, DriftModels } from "./driftModels.ts";
import type { DriftSeries } from "./driftSeries.ts";
import { driftShape } from "./driftShape.ts";
import { type SeasonEffect, seasonEffect } from "./seasonEffect.ts";

/** Another measure of the same loads: the swing of the cycles, the rise rate at full power. Null where a load has none. */
export interface Companion {
  readonly name: string;
  readonly values: readonly (number | null)[];
  /** What else moves it, and is held equal. */
  readonly beside?: PredictorColumn;
}

/**
 * What moved with a drift, and how far. Sizes and intervals, no verdicts: a set point that shifted has a change of offset with
 * companions whose intervals hold 0; worn contacts a swing that grew; a weak heater or fan a rise rate that fell; a season an
 * effect of ambient temperature or duty, with little drift left beside it.
 */
export interface DriftEvidence {
  /** The change that the companions are held against; `constant`: none was found, and they are held against a straight line. */
  readonly against: DriftModelName;
  /** Change of the offset by the last load; null where none was found. */
  readonly offsetChange: Interval | null;
  readonly companions: readonly { readonly name: string; readonly found: CompanionChange | FitFault }[];
  readonly seasons: readonly { readonly name: string; readonly found: SeasonEffect | FitFault }[];
}

/**
 * Gathers the evidence on what kind of drift it is, one regression a measure; see {@link companionChange} and
 * {@link seasonEffect}. Each interval is a 95 % one of its own: of twenty companions that did not move one would look as if.
 *
 * @param series the offsets that `models` were fitted to, without the covariates asked about here
 * @throws RangeError for lengths that differ
 */
export function explainDrift(
  series: DriftSeries,
  models: DriftModels,
  measures: { readonly companions?: readonly Companion[]; readonly seasons?: readonly PredictorColumn[] },
): DriftEvidence {
  const shape = driftShape(models);
  const { companions = [], seasons = [] } = measures;
  return {
    against: shape.model,
    offsetChange: offsetChange(models),
    companions: companions.map(({ name, values, beside }) => ({
      name,
      found: companionChange(values, shape.values, beside ?? null),
    })),
    seasons: seasons.map((season) => ({ name: season.name, found: seasonEffect(series, season, models) })),
  };
}

function offsetChange({ winner, step, creep, sums }: DriftModels): Interval | null {
  if (winner === "step" && step) return step.size;
  if (winner !== "creep" || !creep) return null;
  const now = sums.times[sums.observations - 1] as number;
  return changeInterval(creep.region, creep.best, (onset) => now - onset);
}
