import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import type { KilnReadings } from "../../../src/malting/thermostat/kilnReadings.ts";
import type { RelayPlant } from "../../../src/malting/thermostat/relayCycle.ts";

export const MINUTE = 60_000;

/** The plant of the worked example in tests/published/thermostat-relay-cycle.test.ts. */
export const examplePlant: RelayPlant = {
  timeConstantMinutes: 30,
  heaterOnCelsius: 120,
  heaterOffCelsius: 20,
  switchOffCelsius: 67,
  switchOnCelsius: 63,
};

/** A slower kiln, as flat-bed houses have them: a cycle of 12 minutes about 48 °C, and strong enough to cure. */
export const slowPlant: RelayPlant = {
  timeConstantMinutes: 45,
  heaterOnCelsius: 115,
  heaterOffCelsius: 12,
  switchOffCelsius: 50,
  switchOnCelsius: 46,
  deadTimeMinutes: 1,
};

export interface Firing {
  readonly plant: RelayPlant;
  readonly startCelsius: number;
  readonly minutes: number;
  /** From this minute on the switch points are this much higher. */
  readonly cure?: { readonly atMinute: number; readonly higherBy: number };
  readonly heatOffMinute?: number;
}

export interface FiredKiln {
  /** True air and heater at a minute since loading. */
  readonly air: (minute: number) => number;
  readonly heater: (minute: number) => number;
}

interface Piece {
  readonly from: number;
  readonly start: number;
  readonly towards: number;
  readonly on: boolean;
}

/** Follows the plant piece by piece: each piece is an exact exponential, each switch falls on its exact moment. */
export function fireRelayKiln({ plant, startCelsius, minutes, cure, heatOffMinute }: Firing): FiredKiln {
  const tau = plant.timeConstantMinutes;
  const dead = plant.deadTimeMinutes ?? 0;
  const pieces: Piece[] = [];
  let [now, air, on] = [0, startCelsius, true];
  const after = (minutesOn: number, towards: number): number => towards + (air - towards) * Math.exp(-minutesOn / tau);
  while (now < minutes) {
    const curing = cure !== undefined && now >= cure.atMinute;
    const lift = curing ? cure.higherBy : 0;
    const off = heatOffMinute !== undefined && now >= heatOffMinute;
    if (off) on = false;
    const towards = on ? plant.heaterOnCelsius : plant.heaterOffCelsius;
    const limit = (on ? plant.switchOffCelsius : plant.switchOnCelsius) + lift;
    // Where the set point moved away from the air, the switch comes at once.
    const past = on ? air >= limit : air <= limit;
    const reach = past ? 0 : tau * Math.log((towards - air) / (towards - limit));
    const switchIn = off || Number.isNaN(reach) ? Number.POSITIVE_INFINITY : reach + dead;
    const changes = [cure?.atMinute, heatOffMinute].flatMap((m) => (m !== undefined && m > now ? [m - now] : []));
    const next = Math.min(switchIn, minutes - now, ...changes);
    pieces.push({ from: now, start: air, towards, on });
    air = after(next, towards);
    now += next;
    if (next === switchIn) on = !on;
    else if (curing === false && cure !== undefined && now >= cure.atMinute) on = true;
  }
  const pieceAt = (minute: number): Piece => {
    let [low, high] = [0, pieces.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((pieces[middle] as Piece).from <= minute) low = middle;
      else high = middle - 1;
    }
    return pieces[low] as Piece;
  };
  return {
    air: (minute) => {
      const { from, start, towards } = pieceAt(minute);
      return towards + (start - towards) * Math.exp(-(minute - from) / tau);
    },
    heater: (minute) => (pieceAt(minute).on ? 1 : 0),
  };
}

export interface Logging {
  readonly stepSeconds: number;
  readonly minutes: number;
  readonly noiseKelvin?: number;
  readonly resolutionKelvin?: number;
  readonly heater?: boolean;
  readonly seed?: number;
  /** Share of the readings that a hand or a fault dropped. */
  readonly droppedShare?: number;
}

/** What a logger would have written of it, from loading at 0. */
export function logRelayKiln(kiln: FiredKiln, logging: Logging): KilnReadings {
  const { stepSeconds, minutes, noiseKelvin = 0, resolutionKelvin = 0, droppedShare = 0 } = logging;
  const random = seededRandom(logging.seed ?? 1);
  const share = (): number => random.below(1_000_000) / 1_000_000;
  const noise = (): number => noiseKelvin * (Array.from({ length: 12 }, share).reduce((a, b) => a + b, 0) - 6);
  const at: number[] = [];
  for (let second = 0; second <= minutes * 60; second += stepSeconds) if (share() >= droppedShare) at.push(second);
  const airOnCelsius = Float64Array.from(at, (second) => {
    const value = kiln.air(second / 60) + noise();
    return resolutionKelvin > 0 ? Math.round(value / resolutionKelvin) * resolutionKelvin : value;
  });
  return {
    at: Float64Array.from(at, (second) => second * 1000),
    airOnCelsius,
    airOffCelsius: null,
    bedCelsius: null,
    heaterOn: logging.heater ? Float64Array.from(at, (second) => kiln.heater(second / 60)) : null,
    fanOn: null,
  };
}
