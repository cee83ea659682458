import { dryMatterKilograms, waterRemovedKilograms } from "./massBalance.ts";

/** What stood in the log when the kiln was loaded; null is *not recorded*. */
export interface LoadAtLoading {
  readonly greenLoadKilograms: number | null;
  readonly greenMoisturePercent: number | null;
  readonly grainInKilograms: number | null;
}

/** What this house usually does, from its own earlier loads. */
export interface UsualGain {
  /** Green malt loaded for each kilogram of grain steeped, kg/kg. */
  readonly greenPerGrain: number;
  readonly greenMoisturePercent: number;
}

export type WaterBasis =
  | "green load and green moisture"
  | "green load at the usual green moisture"
  | "grain in at the usual gain";

export interface WaterToRemove {
  readonly kilograms: number;
  readonly basis: WaterBasis;
}

/**
 * Water that the kiln has to carry off, kg, from what is known at loading only: never from the malt that came out, which
 * would let an estimate look at its own answer.
 *
 * @param targetMoisturePercent the final moisture that the house dries to
 * @returns null where neither green load nor grain in was recorded, or `usual` is needed and null
 * @throws {RangeError} when the green malt would have to be drier than the target
 */
export function waterToRemove(
  load: LoadAtLoading,
  usual: UsualGain | null,
  targetMoisturePercent: number,
): WaterToRemove | null {
  const of = (greenKilograms: number, greenMoisturePercent: number, basis: WaterBasis): WaterToRemove => {
    if (greenMoisturePercent < targetMoisturePercent) {
      throw new RangeError(
        `green malt at ${greenMoisturePercent} % is drier than the target ${targetMoisturePercent} %`,
      );
    }
    const dryMatter = dryMatterKilograms(greenKilograms, greenMoisturePercent);
    return { kilograms: waterRemovedKilograms(dryMatter, greenMoisturePercent, targetMoisturePercent), basis };
  };
  if (load.greenLoadKilograms !== null && load.greenMoisturePercent !== null) {
    return of(load.greenLoadKilograms, load.greenMoisturePercent, "green load and green moisture");
  }
  if (!usual) return null;
  if (load.greenLoadKilograms !== null) {
    return of(load.greenLoadKilograms, usual.greenMoisturePercent, "green load at the usual green moisture");
  }
  if (load.grainInKilograms !== null) {
    return of(load.grainInKilograms * usual.greenPerGrain, usual.greenMoisturePercent, "grain in at the usual gain");
  }
  return null;
}
