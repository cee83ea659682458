import {
  alarmOf,
  type DriftPowerOptions,
  driftPowerDefaults,
  type HouseShare,
  modelsOf,
  simulationOf,
  soFar,
} from "./driftPowerOptions.ts";
import { simulateOffsets } from "./simulateOffsets.ts";

/** What the alarm and the models made of houses where nothing happens. */
export interface QuietPower {
  /** Loads that an alarm could be raised on. */
  readonly loads: number;
  readonly alarms: number;
  readonly housesAlarmed: HouseShare;
  /** Stretches of which the models, at their end, make a change; and a clear one. */
  readonly givenChange: HouseShare;
  readonly givenClearChange: HouseShare;
}

/** Loads after the baseline in which false alarms are counted. */
const watchedLoads = 100;

/**
 * Simulates houses where nothing happens, one a seed, for 100 loads after the baseline, and counts false alarms and the changes
 * that the models make of nothing. For the bench.
 */
export function quietPower(seeds: readonly number[], changes: Partial<DriftPowerOptions> = {}): QuietPower {
  const options = { ...driftPowerDefaults, ...changes };
  const { settings, earlierLoads } = options;
  const baseline = earlierLoads >= settings.earlierLoads ? settings.baselineLoadsWithEarlier : settings.baselineLoads;
  const houses = seeds.map((seed) => {
    const house = simulateOffsets(seed, { kind: "quiet" }, simulationOf(options, baseline + watchedLoads));
    const { winner, isClear } = modelsOf(soFar(house, house.values.length));
    return { alarms: alarmOf(house, options).alarms.length, changed: winner !== "constant", isClear };
  });
  const share = (counts: (house: (typeof houses)[number]) => boolean): HouseShare => ({
    count: houses.filter(counts).length,
    of: houses.length,
  });
  return {
    loads: watchedLoads * houses.length,
    alarms: houses.reduce((sum, { alarms }) => sum + alarms, 0),
    housesAlarmed: share(({ alarms }) => alarms > 0),
    givenChange: share(({ changed }) => changed),
    givenClearChange: share(({ changed, isClear }) => changed && isClear),
  };
}
