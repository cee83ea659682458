import { dryMatterKilograms } from "../../src/malting/massBalance.ts";
import type { Batch } from "./batch.ts";
import { localText } from "./clock.ts";
import { KILN } from "./fan.ts";
import { greenDryMatter } from "./logFloor.ts";
import { roundTo } from "./loggedLoad.ts";
import { type RandomStream, randomStream } from "./random.ts";
import { LOGS_END, numberText, type Row } from "./rows.ts";
import type { SimulatedLoad } from "./simulateHouse.ts";

const PLACES = ["front left", "front right", "middle", "back left", "back right"] as const;

/** The rows of one firing in kilning.csv and moisture-samples.csv, and what malt there was to sell. */
export interface KilnRows {
  readonly kilning: readonly Row[];
  readonly samples: readonly Row[];
  readonly made: readonly {
    readonly run: string;
    readonly maltKilograms: number;
    readonly rootletsKilograms: number;
  }[];
}

export function logKilning(seed: number, load: SimulatedLoad): KilnRows {
  const { logged } = load;
  const done = logged.unloadedAt <= LOGS_END;
  const r = randomStream(seed, "kiln-log", load.planned.index);
  const kilning: Row[] = [];
  const samples: Row[] = [];
  const made: { run: string; maltKilograms: number; rootletsKilograms: number }[] = [];
  for (const [i, batch] of load.batches.entries()) {
    const grain = load.grainKilograms[i] ?? 0;
    const run = batch.planned.run;
    const masses = weigh(batch, grain, load, r);
    const tested = testMoisture(seed, batch, load);
    const blankFinal = r.chance(0.03) && tested.samples.length > 0;
    const noCleaned = r.chance(0.1);
    if (done) {
      samples.push(...tested.samples);
      made.push({ run, maltKilograms: masses.cleaned, rootletsKilograms: masses.rootlets });
    }
    kilning.push({
      run,
      kiln: KILN.id,
      load: logged.load,
      loaded_at: localText(logged.loadedAt),
      cure_started_at: logged.cureStartedAt <= LOGS_END ? localText(logged.cureStartedAt) : "",
      heat_off_at: logged.heatOffAt <= LOGS_END ? localText(logged.heatOffAt) : "",
      unloaded_at: done ? localText(logged.unloadedAt) : "",
      bed_depth_cm: numberText(100 * logged.bedDepthMetres, 1),
      green_load_kg: numberText(roundTo(grain * batch.greenPerGrain * logged.scaleShare, 0.5), 1),
      ambient_rh_pct: numberText(logged.relativeHumidityPercent, 0),
      ambient_c: numberText(logged.celsius, 1),
      ambient_basis: "at_loading",
      drying_set_c: numberText(logged.dryingSetCelsius, 0),
      cure_set_c: numberText(logged.cureSetCelsius, 0),
      fan_set_c: load.fanSetCelsius === null ? "" : numberText(load.fanSetCelsius, 0),
      final_moisture_pct: done && !blankFinal ? numberText(tested.final, 1) : "",
      malt_out_kg: done ? numberText(masses.malt, 1) : "",
      cleaned_out_kg: done && !noCleaned ? numberText(masses.cleaned, 1) : "",
      rootlets_kg: done ? numberText(masses.rootlets, 1) : "",
      energy_kwh: done ? numberText(logged.energyKilowattHours, 0) : "",
      bag_code: done ? `${batch.planned.variety.name.slice(0, 1)}${run.replace("-", "")}` : "",
      note: "",
    });
  }
  return { kilning, samples, made };
}

/** The kiln's malt on the scale: as unloaded, then cleaned of rootlets and dust. */
function weigh(
  batch: Batch,
  grain: number,
  load: SimulatedLoad,
  r: RandomStream,
): { malt: number; cleaned: number; rootlets: number } {
  const share = load.logged.scaleShare;
  const moisture = load.fired.finalMoisturePercent;
  const dry = greenDryMatter(batch, grain);
  const rootletsDry = dryMatterKilograms(grain, batch.planned.lot.moisturePercent) * batch.rootletsShare;
  const malt = (dry * (0.998 + 0.0015 * r.normal())) / (1 - moisture / 100);
  const rootlets = rootletsDry / 0.94;
  const dust = 0.003 * malt * (1 + 0.3 * r.normal());
  return {
    malt: roundTo(malt * share, 0.5),
    cleaned: roundTo((malt - rootlets - dust) * share, 0.5),
    rootlets: roundTo(rootlets * share * (1 + 0.03 * r.normal()), 0.5),
  };
}

/** The moisture meter (steps of 0.1) over three to five places, and what was written down as the batch's own. */
function testMoisture(seed: number, batch: Batch, load: SimulatedLoad): { final: number; samples: Row[] } {
  const r = randomStream(seed, "moisture-log", batch.planned.index * 10 + (load.planned.index % 10));
  const uneven = batch.planned.lot.unevenness;
  const mean = load.fired.finalMoisturePercent + load.planted.meterPoints + (uneven > 1 ? 0.42 * r.normal() : 0);
  const n = r.chance(0.86) ? r.integer(3, 5) : 0;
  if (n === 0) return { final: roundTo(mean + 0.12 * r.normal(), 0.1), samples: [] };
  const values = Array.from({ length: n }, () => roundTo(mean + 0.16 * uneven * r.normal() + 0.07 * r.normal(), 0.1));
  return {
    final: roundTo(values.reduce((sum, v) => sum + v, 0) / n, 0.1),
    samples: values.map((v, i) => ({ run: batch.planned.run, place: PLACES[i] ?? "", moisture_pct: numberText(v, 1) })),
  };
}
