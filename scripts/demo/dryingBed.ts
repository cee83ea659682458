import { CHUNG_PFOST } from "../../src/malting/equilibriumMoisture.ts";
import { PRESSURE_PASCALS, ratioAt, saturationPascals } from "./airTable.ts";

export const LAYERS = 12;

export type DryingGrain = "barley" | "wheat";

/** Thin-layer drying, rate = a·exp(−b/T) in 1/s, T in kelvins (from memory: Boyce 1966 for barley, and for wheat). */
const THIN_LAYER: Readonly<Record<DryingGrain, { readonly a: number; readonly b: number }>> = {
  barley: { a: 139.3, b: 4426 },
  wheat: { a: 2000, b: 5094 },
};
/**
 * Malt dries slower than the grain those constants were fitted to, and slower still at the end: a share fitted so that a
 * cure of three to four hours ends between 4 and 5 % (common practice).
 */
const MALT_SHARE: Readonly<Record<DryingGrain, number>> = { barley: 0.75, wheat: 0.52 };
const LATE_MOISTURE = 0.055;

/** The grain in the kiln, layer by layer from the floor up. */
export interface DryingBed {
  readonly grain: DryingGrain;
  readonly dryMatterKilograms: number;
  /** How fast these kernels give up water, 1 for the usual. */
  readonly kernelSpeed: number;
  /** kg water per kg dry matter. */
  readonly moisture: Float64Array;
  readonly celsius: Float64Array;
}

export function freshBed(
  grain: DryingGrain,
  dryMatterKilograms: number,
  moisture: number,
  celsius: number,
  kernelSpeed: number,
): DryingBed {
  return {
    grain,
    dryMatterKilograms,
    kernelSpeed,
    moisture: new Float64Array(LAYERS).fill(moisture),
    celsius: new Float64Array(LAYERS).fill(celsius),
  };
}

/** kJ a kilogram of dry matter and kelvin: dry grain, and its water (from memory). */
const DRY_GRAIN_HEAT = 1.3;
const WATER_HEAT = 4.19;

/**
 * Let air of `inletCelsius` and humidity ratio `inletRatio` pass upward through the bed for a short while.
 *
 * Each layer gives up what its kernels can (thin layer) or what the passing air can take up to saturation, whichever is
 * less; air and grain leave a layer at one temperature; evaporation cools both. The step must be short against the time
 * a layer takes to warm (20 s against some minutes).
 *
 * @param dryAirKilograms dry air that passes in this step
 * @param seconds length of the step
 */
export function passAir(
  bed: DryingBed,
  inletCelsius: number,
  inletRatio: number,
  dryAirKilograms: number,
  seconds: number,
): void {
  const { moisture, celsius, grain } = bed;
  const layerDry = bed.dryMatterKilograms / LAYERS;
  const { a, b } = THIN_LAYER[grain];
  const emc = CHUNG_PFOST[grain === "barley" ? "barley" : "wheat-hard"];
  let airCelsius = inletCelsius;
  let ratio = inletRatio;
  for (let i = 0; i < LAYERS; i++) {
    const m = moisture[i] as number;
    const airHeat = dryAirKilograms * (1.006 + 1.86 * ratio);
    const grainHeat = layerDry * (DRY_GRAIN_HEAT + WATER_HEAT * m);
    const heat = airHeat + grainHeat;
    const unevaporated = (airHeat * airCelsius + grainHeat * (celsius[i] as number)) / heat;
    const bound = m < 0.35 ? 1 + 0.6 * Math.exp(-15 * m) : 1;
    const latent = (2501 - 2.36 * unevaporated) * bound;

    // What the air can take: saturation at the temperature that this very evaporation leaves, to first order.
    const saturated = ratioAt(saturationPascals(unevaporated));
    const slope = (ratioAt(saturationPascals(unevaporated + 0.1)) - saturated) / 0.1;
    const carried = (saturated - ratio) / (1 / dryAirKilograms + (slope * latent) / heat);

    // What the kernels give up, towards the moisture in balance with the air that meets them.
    const humidity = Math.min(
      0.98,
      Math.max(0.005, (PRESSURE_PASCALS * ratio) / (0.621945 + ratio) / saturationPascals(airCelsius)),
    );
    const balance = Math.max(0, -Math.log((-(airCelsius + emc.c) * Math.log(humidity)) / emc.a) / emc.b) / 100;
    const rate = MALT_SHARE[grain] * bed.kernelSpeed * a * Math.exp(-b / (airCelsius + 273.15));
    const given = layerDry * rate * seconds * (m - balance) * (m / (m + LATE_MOISTURE));

    const evaporated = carried < 0 ? carried : Math.max(0, Math.min(carried, given));
    const out = unevaporated - (latent * evaporated) / heat;
    moisture[i] = m - evaporated / layerDry;
    celsius[i] = out;
    ratio += evaporated / dryAirKilograms;
    airCelsius = out;
  }
}

/** Mean moisture of the bed, % of the mass as it is. */
export function bedMoisturePercent(bed: DryingBed): number {
  let sum = 0;
  for (const m of bed.moisture) sum += m;
  const mean = sum / LAYERS;
  return (100 * mean) / (1 + mean);
}
