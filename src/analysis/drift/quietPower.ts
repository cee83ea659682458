import {
  alarmOf,
  type DriftPowerOptions,
  driftPowerDefaults,
  type HouseShare,
  modelsOf,
  simulationOf,
  soFar,
} from "./driftPowerOptions.ts";
import type { DriftSeries } from "./driftSeries.ts";
import { fewestLoads } from "./fewestLoads.ts";
import { mannKendall } from "./mannKendall.ts";
import { pettitt } from "./pettitt.ts";
import { type SimulatedOffsets, simulateOffsets } from "./simulateOffsets.ts";

/** What the alarm and the models made of houses where nothing happens. */
export interface QuietPower {
  /** Loads that an alarm could be raised on. */
  readonly loads: number;
  readonly alarms: number;
  readonly housesAlarmed: HouseShare;
  /** Stretches of which the models, at their end, make a change; and a clear one. */
  readonly givenChange: HouseShare;
  readonly givenClearChange: HouseShare;
  /**
   * Houses that a test asked again after every load, from the eighth on, would flag at 5 % at least once in these 100 loads: why
   * such tests raise no alarm.
   */
  readonly flaggedByMannKendall: HouseShare;
  readonly flaggedByPettitt: HouseShare;
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
    return {
      alarms: alarmOf(house, options).alarms.length,
      changed: winner !== "constant",
      isClear,
      mannKendall: everFlags(house, ({ days, values }) => mannKendall(days, values)?.p),
      pettitt: everFlags(house, ({ values }) => pettitt(values)?.p),
    };
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
    flaggedByMannKendall: share(({ mannKendall: flags }) => flags),
    flaggedByPettitt: share(({ pettitt: flags }) => flags),
  };
}

/** Whether a test that is asked again after each of the watched loads is ever significant at 5 %. */
function everFlags(house: SimulatedOffsets, p: (series: DriftSeries) => number | undefined): boolean {
  for (let loads = fewestLoads; loads <= watchedLoads; loads += 1) {
    if ((p(soFar(house, loads)) ?? 1) < 0.05) return true;
  }
  return false;
}
