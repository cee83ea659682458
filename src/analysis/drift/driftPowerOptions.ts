import { isFitFault } from "../fitFault.ts";
import { type DriftAlarm, driftAlarm } from "./driftAlarm.ts";
import { type DriftAlarmSettings, driftAlarmSettings } from "./driftAlarmSettings.ts";
import { type DriftModels, fitDriftModels } from "./driftModels.ts";
import type { DriftSeries } from "./driftSeries.ts";
import type { SimulatedOffsets, SimulationOptions } from "./simulateOffsets.ts";

/** The houses that the power study simulates. */
export interface DriftPowerOptions {
  readonly tolerance: number;
  /** Standard deviation of a load's offset. */
  readonly noise: number;
  readonly loadsPerMonth: number;
  /** Loads of an earlier stretch that help to tell the spread; 0 for a house's first calibration. */
  readonly earlierLoads: number;
  readonly settings: DriftAlarmSettings;
}

export const driftPowerDefaults: DriftPowerOptions = {
  tolerance: 2,
  noise: 0.4,
  loadsPerMonth: 6,
  earlierLoads: 0,
  settings: driftAlarmSettings,
};

/** A count of houses, out of those that it could be counted in. */
export interface HouseShare {
  readonly count: number;
  readonly of: number;
}

/** The first and the last load at which a change may begin. */
export const onsetLoads: readonly [number, number] = [10, 50];

export function simulationOf(options: DriftPowerOptions, loads: number): SimulationOptions {
  const { noise, loadsPerMonth, earlierLoads } = options;
  return { noise, loadsPerMonth, earlierLoads, quietLoads: onsetLoads, loads };
}

/** @throws RangeError where a house cannot be charted, which the study's sizes forbid */
export function alarmOf(house: SimulatedOffsets, { settings }: DriftPowerOptions): DriftAlarm {
  const alarm = driftAlarm({ values: house.values, earlier: house.earlier }, settings);
  if (isFitFault(alarm)) throw new RangeError(`a simulated house cannot be charted: ${alarm.kind}`);
  return alarm;
}

/** A house's first `loads`, as far as one had come when the models are asked. */
export function soFar({ days, values }: SimulatedOffsets, loads: number): DriftSeries {
  return { days: days.subarray(0, loads), values: values.subarray(0, loads) };
}

/** @throws RangeError where the series cannot be modelled, which the study's sizes forbid */
export function modelsOf(series: DriftSeries): DriftModels {
  const models = fitDriftModels(series);
  if (isFitFault(models)) throw new RangeError(`a simulated house cannot be modelled: ${models.kind}`);
  return models;
}
