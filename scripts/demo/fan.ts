import { DAMP_GRAIN_FACTOR, pressureDropPerMetre } from "../../src/malting/airflowResistance.ts";
import type { DryingGrain } from "./dryingBed.ts";

/** The invented kiln: one flat bed, an electric heater, a centrifugal fan ahead of it. */
export const KILN = {
  id: "K1",
  floorSquareMetres: 6,
  heaterKilowatts: 37.5,
  /** What the fan moves against no resistance at all. */
  fanCubicMetresPerHour: 2080,
  fanKilowatts: 1.1,
} as const;

/** Highest pressure of the fan, with the damper shut. */
const SHUT_OFF_PASCALS = 420;
/** Ducts, heater and perforated floor together, at 1 m³/s. */
const DUCT_PASCALS = 620;
/** Green malt with its rootlets lies tighter than the loose dry grain that Shedd's equation was fitted to. */
const PACKING = 2.2;

/**
 * Air that the fan moves through a bed, m³/s at its inlet: where the fan's curve meets the resistance of ducts and bed.
 *
 * @param wetness 1 for green malt, 0 for dry
 */
export function fanFlow(grain: DryingGrain, bedDepthMetres: number, wetness: number, airShare: number): number {
  const open = (KILN.fanCubicMetresPerHour / 3600) * airShare;
  const packing = PACKING * (DAMP_GRAIN_FACTOR * wetness + 1 * (1 - wetness)) * bedDepthMetres;
  let flow = 0.75 * open;
  for (let step = 0; step < 12; step++) {
    const bed = packing * pressureDropPerMetre(grain, flow / KILN.floorSquareMetres);
    const excess = SHUT_OFF_PASCALS * airShare ** 2 * (1 - (flow / open) ** 2) - DUCT_PASCALS * flow ** 2 - bed;
    const slope =
      (-2 * SHUT_OFF_PASCALS * airShare ** 2 * flow) / open ** 2 - 2 * DUCT_PASCALS * flow - (1.4 * bed) / flow;
    const next = flow - excess / slope;
    if (Math.abs(next - flow) < 1e-7) return next;
    flow = Math.max(0.05 * open, next);
  }
  return flow;
}
