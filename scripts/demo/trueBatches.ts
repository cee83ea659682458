import { dryMatterYieldPercent } from "../../src/malting/massBalance.ts";
import { logKilning } from "./logKiln.ts";
import { LOGS_END } from "./rows.ts";
import type { SimulatedHouse } from "./simulateHouse.ts";
import type { LoadFault } from "./truths.ts";

/** A batch off the kiln as it truly was, but for the scale, whose word is all that the house has of its malt. */
export interface TrueBatch {
  readonly run: string;
  readonly finalMoisturePercent: number;
  /** Of the cleaned malt as the scale showed it, at the malt's true moisture. */
  readonly dryMatterYieldPercent: number;
  readonly faults: ReadonlySet<LoadFault>;
  readonly poorLot: boolean;
}

/** All batches of a simulated house that were off the kiln when its logs end, by run; a split one as the sum of its parts. */
export function trueBatches(house: SimulatedHouse): ReadonlyMap<string, TrueBatch> {
  interface Sum {
    malt: number;
    water: number;
    grain: number;
    grainMoisture: number;
    poorLot: boolean;
    faults: Set<LoadFault>;
  }
  const sums = new Map<string, Sum>();
  for (const load of house.loads) {
    if (load.fired.unloadedAt > LOGS_END) continue;
    const { made } = logKilning(house.options.seed, load);
    for (const [i, batch] of load.batches.entries()) {
      const { run, lot } = batch.planned;
      const sum = sums.get(run) ?? {
        malt: 0,
        water: 0,
        grain: 0,
        grainMoisture: lot.moisturePercent,
        poorLot: lot.unevenness > 1,
        faults: new Set(),
      };
      const malt = made[i]?.maltKilograms ?? Number.NaN;
      sum.malt += malt;
      sum.water += (malt * load.fired.finalMoisturePercent) / 100;
      sum.grain += load.grainKilograms[i] ?? Number.NaN;
      for (const fault of load.faults) sum.faults.add(fault);
      sums.set(run, sum);
    }
  }
  return new Map(
    [...sums].map(([run, { malt, water, grain, grainMoisture, poorLot, faults }]) => {
      const finalMoisturePercent = (100 * water) / malt;
      const batch = {
        grainInKilograms: grain,
        grainMoisturePercent: grainMoisture,
        maltKilograms: malt,
        maltMoisturePercent: finalMoisturePercent,
      };
      return [run, { run, finalMoisturePercent, dryMatterYieldPercent: dryMatterYieldPercent(batch), faults, poorLot }];
    }),
  );
}
