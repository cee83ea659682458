import type { FiredLoad } from "./firedLoad.ts";
import { randomStream } from "./random.ts";
import { MIS_SET_SCALE } from "./truths.ts";

/** What the house wrote down of a firing: rounded, and with the errors of scale, rule, meter and hygrometer. */
export interface LoggedLoad {
  readonly load: string;
  readonly loadedAt: number;
  readonly cureStartedAt: number;
  readonly heatOffAt: number;
  readonly unloadedAt: number;
  readonly kilnHours: number;
  readonly dryingHours: number;
  readonly bedDepthMetres: number;
  readonly greenLoadKilograms: number;
  readonly greenMoisturePercent: number;
  readonly grainInKilograms: number;
  readonly relativeHumidityPercent: number;
  readonly celsius: number;
  readonly dryingSetCelsius: number;
  readonly cureSetCelsius: number;
  readonly finalMoisturePercent: number;
  readonly energyKilowattHours: number;
  /** What this load's scale showed, as a share of the truth. */
  readonly scaleShare: number;
}

const HOUR = 3_600_000;
/** To the nearest step, without the crumbs of binary fractions. */
export const roundTo = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6));

export function logLoad(
  seed: number,
  load: FiredLoad,
  greenMoisturePercent: number,
  outside: { readonly celsius: number; readonly relativeHumidityPercent: number },
  misset: boolean,
): LoggedLoad {
  const r = randomStream(seed, "log", load.planned.index);
  const { fired, planned } = load;
  const variety = load.batches[0]?.planned.variety;
  const scaleShare = (misset ? MIS_SET_SCALE.share : 1) * load.planted.scaleShare * (1 + 0.002 * r.normal());
  return {
    load: `F${String(planned.index + 1).padStart(3, "0")}`,
    loadedAt: planned.loadedAt,
    cureStartedAt: fired.cureStartedAt,
    heatOffAt: fired.heatOffAt,
    unloadedAt: fired.unloadedAt,
    kilnHours: (fired.unloadedAt - planned.loadedAt) / HOUR,
    dryingHours: (fired.cureStartedAt - planned.loadedAt) / HOUR,
    // The mean of a dip stick in five places.
    bedDepthMetres: roundTo(load.bedDepthMetres + 0.001 * r.normal(), 0.001),
    greenLoadKilograms: roundTo(load.greenKilograms * scaleShare, 0.5),
    greenMoisturePercent: roundTo(greenMoisturePercent + 0.35 * r.normal(), 0.1),
    grainInKilograms: load.grainKilograms.reduce((sum, kg) => sum + kg, 0),
    relativeHumidityPercent: Math.min(99, Math.round(outside.relativeHumidityPercent + 1.5 * r.normal())),
    celsius: roundTo(outside.celsius + 0.3 * r.normal(), 0.5),
    dryingSetCelsius: variety?.dryingSetCelsius ?? 48,
    cureSetCelsius: variety?.cureSetCelsius ?? 80,
    finalMoisturePercent: roundTo(fired.finalMoisturePercent + load.planted.meterPoints + 0.08 * r.normal(), 0.1),
    energyKilowattHours: Math.round(fired.energyKilowattHours * (1 + 0.004 * r.normal())),
    scaleShare,
  };
}
