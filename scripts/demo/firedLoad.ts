import type { Batch } from "./batch.ts";
import type { Fired } from "./kilning.ts";
import type { PlannedLoad } from "./plan.ts";
import type { Planted } from "./plant.ts";
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
  /** What a trouble planted in a quiet house did to it. */
  readonly planted: Planted;
  readonly fired: Fired;
  /** Loading to unloading, true elapsed hours, from the times as written down. */
  readonly kilnHours: number;
  readonly faults: readonly LoadFault[];
}
