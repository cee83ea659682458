import { dryBasisMoisture, dryMatterKilograms } from "../../src/malting/massBalance.ts";
import { type Batch, simulateBatch } from "./batch.ts";
import { airAt, simulateWeather, type Weather } from "./climate.ts";
import { addDays, DAY, HOUR, instantAt } from "./clock.ts";
import { freshBed } from "./dryingBed.ts";
import { KILN } from "./fan.ts";
import type { FiredLoad } from "./firedLoad.ts";
import { fire } from "./kilning.ts";
import { type LoggedLoad, logLoad } from "./loggedLoad.ts";
import { makePlan, type Plan, type PlannedLoad } from "./plan.ts";
import { type Plant, plantedOn } from "./plant.ts";
import { randomStream } from "./random.ts";
import * as truths from "./truths.ts";

export interface HouseOptions {
  readonly seed: number;
  /** How many batches reach the kiln, besides two under way behind them; the standard house has {@link truths.DEMO_RUNS}. */
  readonly runs?: number;
  /** Spread them over this many years to the end of the logs; without it at the house's own pace. */
  readonly years?: number;
  /** Lay every bed this much deeper, with the grain that fills it: same weather, same decisions. */
  readonly extraBedDepthMetres?: number;
  /** Keep the minute-by-minute trace of every firing (takes memory; leave out for large houses). */
  readonly readings?: boolean;
  /** Leave belt, drift, fan thermostat and scale in good order. */
  readonly faults?: boolean;
  /** Leave only these in good order, and all else as it is. */
  readonly mended?: readonly ("slipping belt" | "mis-set scale")[];
  /**
   * A house in good order throughout (no fault, poor lot, slip of the pen or of the logger, no change to its bed), but for
   * one trouble that is planted, or none.
   */
  readonly quiet?: { readonly plant: Plant | null };
}

/** One firing: what truly happened, and what the house wrote down of it. */
export interface SimulatedLoad extends FiredLoad {
  readonly logged: LoggedLoad;
}

export interface SimulatedHouse {
  readonly options: HouseOptions;
  readonly plan: Plan;
  readonly weather: Weather;
  readonly batches: readonly Batch[];
  /** Batches in the steep or on the floor when the logs end. */
  readonly coming: readonly Batch[];
  readonly loads: readonly SimulatedLoad[];
}

/** A thermostat this far off, K, or more makes a load's hours differ from those of a good one. */
const DRIFT_THAT_COUNTS = 0.3;

/**
 * The invented house from first grain to last load, as plain rows. Same seed, same rows; with `extraBedDepthMetres` the
 * very same weather, grain and people meet a deeper bed.
 */
export function simulateHouse(options: HouseOptions): SimulatedHouse {
  const { seed } = options;
  const { quiet } = options;
  const plan = makePlan(seed, options.runs ?? truths.DEMO_RUNS, options.years ?? null, quiet);
  const first = plan.loads[0];
  if (!first) throw new RangeError(`a house needs at least one run; got ${options.runs}`);
  const from = Math.floor((first.loadedAt - 14 * DAY) / HOUR) * HOUR;
  const weather = simulateWeather(seed, from, instantAt(truths.LAST_DATE, 24) + 2 * DAY);
  const batches = new Map<number, Batch>();
  const { from: missetFrom } = truths.MIS_SET_SCALE;
  const isMisset = ({ date, runs }: PlannedLoad): boolean =>
    date >= missetFrom && date < addDays(missetFrom, 7) && runs.length === 1;
  const missetLoad = plan.loads.find(isMisset)?.index ?? null;
  const loads: SimulatedLoad[] = [];
  for (const planned of plan.loads) {
    const here = planned.runs.map(({ run }) => {
      const batch = batches.get(run.index) ?? simulateBatch(seed, run, planned.loadedAt, quiet?.plant);
      batches.set(run.index, batch);
      return batch;
    });
    loads.push(simulateLoad(options, planned, here, weather, missetLoad));
  }
  const coming = plan.coming.map(({ run, loadedAt }) => simulateBatch(seed, run, loadedAt, quiet?.plant));
  return { options, plan, weather, batches: [...batches.values()], coming, loads };
}

function simulateLoad(
  options: HouseOptions,
  planned: PlannedLoad,
  batches: readonly Batch[],
  weather: Weather,
  missetLoad: number | null,
): SimulatedLoad {
  const { seed, quiet } = options;
  const faulty = quiet === undefined && (options.faults ?? true);
  const date = planned.date;
  const r = randomStream(seed, "load", planned.index);
  const lead = batches[0];
  if (!lead) throw new RangeError(`load ${planned.index} holds no run`);
  const variety = lead.planned.variety;

  // How much grain: what brings the bed to the depth the house works at, give or take, to the nearest 5 kg.
  const usualDepth =
    quiet === undefined && date < truths.SHALLOWER_BED.on
      ? truths.SHALLOWER_BED.beforeMetres
      : truths.SHALLOWER_BED.afterMetres;
  const wantedDepth = usualDepth + 0.0085 * r.normal();
  const wantedGreen = wantedDepth * KILN.floorSquareMetres * variety.greenDensity;
  const chosen = batches.map((b) => 5 * Math.round(wantedGreen / batches.length / b.greenPerGrain / 5));
  const filling = KILN.floorSquareMetres * lead.greenDensity;
  const greenOf = (grain: readonly number[]): number =>
    grain.reduce((sum, kg, i) => sum + kg * (batches[i] as Batch).greenPerGrain, 0);
  const more = 1 + (options.extraBedDepthMetres ?? 0) / (greenOf(chosen) / filling);
  const grainKilograms = chosen.map((kg) => kg * more);
  const greenKilograms = greenOf(grainKilograms);
  const bedDepthMetres = greenKilograms / filling;

  let dryMatter = 0;
  for (const [i, b] of batches.entries()) {
    dryMatter += dryMatterKilograms((grainKilograms[i] as number) * b.greenPerGrain, b.greenMoisturePercent);
  }
  const greenMoisture = 100 * (1 - dryMatter / greenKilograms);
  const thermostatOffset = faulty ? truths.thermostatOffset(date) : 0;
  const repeats = truths.THERMOSTAT_REPEATS_WITHIN * randomStream(seed, "thermostat", planned.index).normal();
  const { from, to, setCelsius } = truths.FAN_THERMOSTAT;
  const fanSetCelsius = faulty && date >= from && date < to ? setCelsius : null;
  const mended = options.mended ?? [];
  const { from: slippedFrom, repairedOn, airShare, cureAirShare } = truths.SLIPPING_BELT;
  const belt = faulty && !mended.includes("slipping belt") && date >= slippedFrom && date < repairedOn;
  const spreading = 1 + 0.026 * r.normal();
  const planted = plantedOn(quiet?.plant ?? null, date);
  const fired = fire(
    {
      loadedAt: planned.loadedAt,
      bed: freshBed(
        variety.grain,
        dryMatter,
        dryBasisMoisture(greenMoisture),
        (lead.beds[0]?.meanCelsius ?? 15) + 1,
        lead.kernelSpeed,
      ),
      bedDepthMetres,
      dryingSetCelsius: variety.dryingSetCelsius,
      cureSetCelsius: variety.cureSetCelsius,
      thermostatOffset: thermostatOffset + planted.thermostatKelvin + repeats,
      fanSetCelsius,
      airShare: spreading * planted.airShare * (belt ? airShare : 1),
      cureAirShare: spreading * planted.cureAirShare * (belt ? cureAirShare : 1),
      planted,
    },
    weather,
    randomStream(seed, "maltster", planned.index),
    options.readings ?? false,
  );

  const faults: truths.LoadFault[] = [];
  if (belt) faults.push("slipping belt");
  if (Math.abs(thermostatOffset) >= DRIFT_THAT_COUNTS) faults.push("thermostat drift");
  if (fired.holdFanShare < 0.99) faults.push("fan thermostat");
  if (fired.holdDuty > 0.97) faults.push("power-limited");
  const misset = faulty && !mended.includes("mis-set scale") && planned.index === missetLoad;
  if (misset) faults.push("mis-set scale");

  const load = {
    planned,
    batches,
    grainKilograms,
    greenKilograms,
    bedDepthMetres,
    thermostatOffset,
    fanSetCelsius,
    planted,
    fired,
    kilnHours: (fired.unloadedAt - planned.loadedAt) / HOUR,
    faults,
  };
  return { ...load, logged: logLoad(seed, load, greenMoisture, airAt(weather, planned.loadedAt), misset) };
}

/**
 * The truth that the drying-air model is asked to find: mean change of kiln hours, in true simulated firings, when one
 * centimetre of bed with the grain that fills it is added and nothing else changes; loads with a fault left out.
 */
export function bedDepthTruthHoursPerCentimetre(seed: number, runs = truths.DEMO_RUNS): number {
  const before = simulateHouse({ seed, runs });
  const after = simulateHouse({ seed, runs, extraBedDepthMetres: 0.01 });
  let sum = 0;
  let count = 0;
  for (const [i, load] of before.loads.entries()) {
    if (load.faults.length > 0) continue;
    sum += (after.loads[i] as SimulatedLoad).kilnHours - load.kilnHours;
    count++;
  }
  if (count === 0) throw new RangeError(`seed ${seed} left no load without a fault`);
  return sum / count;
}
