import type { Batch } from "./batch.ts";
import type { Fired } from "./kilning.ts";
import type { PlannedLoad } from "./plan.ts";
import type { LoadFault } from "./truths.ts";

/** One firing as it truly happened. */
export interface FiredLoad {
  readonly planned: PlannedLoad;
  readonly batches: readonly Batch[];
  /** Grain of each batch in this firing, kg. */
  readonly grainKilograms: readonly number[];
  readonly greenKilograms: number;
  readonly bedDepthMetres: number;
  readonly thermostatOffset: number;
  readonly fanSetCelsius: number | null;
  readonly fired: Fired;
  /** Loading to unloading, true elapsed hours, from the times as written down. */
  readonly kilnHours: number;
  readonly faults: readonly LoadFault[];
}
