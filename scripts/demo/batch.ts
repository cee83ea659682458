import type { AcrospireCounts } from "../../src/malting/acrospire.ts";
import { dryMatterKilograms } from "../../src/malting/massBalance.ts";
import { wintriness } from "./climate.ts";
import { DAY, HOUR, localDate, MINUTE, toFiveMinutes } from "./clock.ts";
import type { PlannedRun } from "./plan.ts";
import { LAGGING_BED, type Plant, plantedOn } from "./plant.ts";
import { type RandomStream, randomStream } from "./random.ts";

/** One batch on the floor: what truly happened in steep and germination, for each kilogram of grain. */
export interface Batch {
  readonly planned: PlannedRun;
  readonly steepStartedAt: number;
  readonly steepEndedAt: number;
  readonly germinationStartedAt: number;
  readonly germinationEndedAt: number;
  readonly wetHours: number;
  readonly waterCelsius: number;
  readonly steepOutPercent: number;
  readonly chittedShare: number;
  readonly beds: readonly { readonly meanCelsius: number; readonly maxCelsius: number; readonly roomCelsius: number }[];
  readonly turns: number;
  readonly greenMoisturePercent: number;
  /** Mean acrospire length at the end, fraction of kernel length, bed by bed. */
  readonly acrospire: readonly number[];
  readonly lossInSteep: number;
  readonly lossBeforeKiln: number;
  readonly rootletsShare: number;
  /** Green malt for each kilogram of grain. */
  readonly greenPerGrain: number;
  readonly greenDensity: number;
  readonly kernelSpeed: number;
}

/** Lag before the acrospire shows, as a fraction of kernel length. */
const ACROSPIRE_LAG = 0.08;
const GROWTH_FROM_CELSIUS = 2;

/** Mean acrospire length after `hours` on the floor at this bed temperature. */
export function acrospireAt(growth: number, bedCelsius: number, hours: number): number {
  return Math.max(0, growth * (bedCelsius - GROWTH_FROM_CELSIUS) * hours - ACROSPIRE_LAG);
}

const BEDS = ["B1", "B2", "B3"] as const;

/** The bed that a part of a run lies in. */
export const bedOf = ({ index }: PlannedRun, part: number): string => BEDS[(index + part) % BEDS.length] ?? "";

/**
 * Steep and germinate a planned run that is to be loaded at `loadedAt`.
 *
 * @param plant a trouble planted in a quiet house
 */
export function simulateBatch(seed: number, planned: PlannedRun, loadedAt: number, plant: Plant | null = null): Batch {
  const { variety, lot } = planned;
  const r = randomStream(seed, "batch", planned.index);
  const winter = wintriness(loadedAt);
  const germinationEndedAt = toFiveMinutes(loadedAt - (20 + 8 * r.uniform()) * MINUTE);
  const germinationStartedAt = toFiveMinutes(germinationEndedAt - 4 * DAY + 25 * r.normal() * MINUTE);
  const steepEndedAt = toFiveMinutes(germinationStartedAt - 10 * MINUTE);
  const steepStartedAt = toFiveMinutes(steepEndedAt - 24 * HOUR + 25 * r.normal() * MINUTE);
  const waterCelsius = 11 - 2.4 * winter + 0.5 * r.normal();
  const wetHours = 12 + 0.5 * Math.round(r.normal()) + plantedOn(plant, localDate(steepStartedAt)).wetHours;
  const { roomKelvin, bedBehind } = plantedOn(plant, localDate(germinationStartedAt));
  const uneven = lot.unevenness;
  const steepOutPercent =
    variety.steepOutPercent +
    lot.uptake +
    0.11 * (waterCelsius - 11) +
    0.35 * (wetHours - 12) +
    0.35 * uneven * r.normal();
  const room = 13.3 - 1.4 * winter + 0.5 * r.normal() + roomKelvin;
  const beds = Array.from({ length: planned.parts }, (_, i) => {
    const meanCelsius = room + 1.5 + 0.35 * r.normal() + 0.5 * i;
    return { meanCelsius, maxCelsius: meanCelsius + 1.6 + 0.5 * Math.abs(r.normal()), roomCelsius: room };
  });
  const hours = (germinationEndedAt - germinationStartedAt) / HOUR;
  const runGrowth = variety.growth * (1 + 0.035 * uneven * r.normal());
  const acrospire = beds.map((bed, part) => {
    const length = acrospireAt(runGrowth, bed.meanCelsius, hours);
    return bedOf(planned, part) === LAGGING_BED ? Math.max(0, length - bedBehind) : length;
  });
  const length = acrospire.reduce((sum, l) => sum + l, 0) / acrospire.length;
  const lossInSteep = 0.008 + 0.001 * r.normal();
  const respired = 0.04 + lot.lossShare + 0.02 * (length - 0.75) + 0.0035 * (4 * uneven - 3) * r.normal();
  const rootletsShare = variety.rootletsShare * (1 + 0.5 * (length - 0.75) + 0.05 * r.normal());
  const greenMoisturePercent = steepOutPercent - 0.6 + 0.3 * r.normal();
  const lossBeforeKiln = lossInSteep + respired;
  const dryShare = dryMatterKilograms(1, lot.moisturePercent) * (1 - lossBeforeKiln);
  return {
    planned,
    steepStartedAt,
    steepEndedAt,
    germinationStartedAt,
    germinationEndedAt,
    wetHours,
    waterCelsius,
    steepOutPercent,
    chittedShare:
      (lot.germinativeEnergyPercent / 100) * Math.min(0.98, 0.88 + 0.01 * (steepOutPercent - 43) + 0.02 * r.normal()),
    beds,
    turns: r.integer(9, 13),
    greenMoisturePercent,
    acrospire,
    lossInSteep,
    lossBeforeKiln,
    rootletsShare,
    greenPerGrain: dryShare / (1 - greenMoisturePercent / 100),
    greenDensity: variety.greenDensity * (1 + 0.018 * r.normal()),
    kernelSpeed: variety.kernelSpeed * lot.kernelSpeed * (1 + 0.03 * r.normal()),
  };
}

/** Count `kernels` at random: those that never germinate have no acrospire, the rest spread about the mean length. */
export function countAcrospires(batch: Batch, meanLength: number, kernels: number, r: RandomStream): AcrospireCounts {
  const { lot, variety } = batch.planned;
  const counts = { none: 0, toQuarter: 0, toHalf: 0, toThreeQuarters: 0, toFull: 0, over: 0 };
  const spread =
    variety.kernelSpread * Math.sqrt(Math.max(0.25, meanLength / 0.75)) * (1 + 0.35 * (lot.unevenness - 1));
  for (let i = 0; i < kernels; i++) {
    const alive = r.uniform() < lot.germinativeEnergyPercent / 100;
    const length = alive ? meanLength + spread * r.normal() : 0;
    if (length <= 0) counts.none++;
    else if (length <= 0.25) counts.toQuarter++;
    else if (length <= 0.5) counts.toHalf++;
    else if (length <= 0.75) counts.toThreeQuarters++;
    else if (length <= 1) counts.toFull++;
    else counts.over++;
  }
  return counts;
}
