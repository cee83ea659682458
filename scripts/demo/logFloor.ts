import { dryMatterKilograms, steepOutMassAt } from "../../src/malting/massBalance.ts";
import { acrospireAt, type Batch, bedOf, countAcrospires } from "./batch.ts";
import { HOUR, localText, toFiveMinutes } from "./clock.ts";
import type { GrainLot } from "./grains.ts";
import { randomStream } from "./random.ts";
import { LOGS_END, numberText, type Row } from "./rows.ts";

const TANKS = ["T1", "T2"] as const;

export const LOT_COLUMNS = [
  "lot", "grain", "variety", "crop_year", "grower", "received_on", "mass_kg", "moisture_pct", "protein_dry_pct",
  "germinative_energy_pct", "plump_pct", "don_mg_kg", "note",
] as const; // biome-ignore format: a row of names reads better than a column

export function logLots(lots: readonly GrainLot[]): Row[] {
  return lots.map((l) => ({
    lot: l.lot,
    grain: l.variety.grain,
    variety: l.variety.name,
    crop_year: String(l.cropYear),
    grower: l.grower,
    received_on: l.receivedOn,
    mass_kg: String(l.massKilograms),
    moisture_pct: numberText(l.moisturePercent, 1),
    protein_dry_pct: numberText(l.proteinDryPercent, 1),
    germinative_energy_pct: numberText(l.germinativeEnergyPercent, 0),
    plump_pct: numberText(l.plumpPercent, 0),
    don_mg_kg: l.donMgKg === null ? "" : numberText(l.donMgKg, 2),
    note: l.note,
  }));
}

/** When it had happened by the time the logs end, else blank. */
const at = (instant: number): string => (instant <= LOGS_END ? localText(instant) : "");

export function logSteeping(seed: number, batch: Batch, grainKilograms: number, scaleShare: number): Row[] {
  const { planned } = batch;
  const r = randomStream(seed, "steep-log", planned.index);
  const ended = batch.steepEndedAt <= LOGS_END;
  const parts = planned.parts;
  return Array.from({ length: parts }, (_, i) => {
    const grain =
      parts === 1
        ? grainKilograms
        : i === 0
          ? 5 * Math.round(grainKilograms / 10)
          : grainKilograms - 5 * Math.round(grainKilograms / 10);
    // Drained grain keeps a little water on its surface; what was leached is gone.
    const drained =
      steepOutMassAt(grain * (1 - batch.lossInSteep), planned.lot.moisturePercent, batch.steepOutPercent) * 1.003;
    const rest = (batch.steepEndedAt - batch.steepStartedAt) / HOUR - batch.wetHours;
    const measured = r.chance(0.35);
    return {
      run: planned.run,
      lot: planned.lot.lot,
      tank: TANKS[(planned.index + i) % 2] ?? "",
      grain_in_kg: numberText(grain, 0),
      grain_moisture_pct: r.chance(0.8) ? numberText(planned.lot.moisturePercent + 0.15 * r.normal(), 1) : "",
      started_at: localText(toFiveMinutes(batch.steepStartedAt)),
      ended_at: at(batch.steepEndedAt),
      water_c: numberText(batch.waterCelsius + 0.2 * r.normal() + 0.2 * i, 1),
      wet_hours: ended ? numberText(batch.wetHours, 1) : "",
      air_rest_hours: ended ? numberText(Math.round(2 * rest) / 2, 1) : "",
      steep_out_kg: ended ? numberText(Math.round(2 * drained * scaleShare * (1 + 0.002 * r.normal())) / 2, 1) : "",
      steep_out_moisture_pct: ended && measured ? numberText(batch.steepOutPercent + 0.3 * r.normal(), 1) : "",
      chitted_pct: ended ? numberText(100 * Math.min(0.99, batch.chittedShare + 0.03 * r.normal()), 0) : "",
      note: "",
    };
  });
}

const counted = (c: ReturnType<typeof countAcrospires>): Row => ({
  acrospire_none: String(c.none),
  acrospire_to_quarter: String(c.toQuarter),
  acrospire_to_half: String(c.toHalf),
  acrospire_to_three_quarters: String(c.toThreeQuarters),
  acrospire_to_full: String(c.toFull),
  acrospire_over: String(c.over),
});

export function logGermination(seed: number, batch: Batch, grainKilograms: number): Row[] {
  const { planned } = batch;
  const r = randomStream(seed, "germination-log", planned.index);
  if (batch.germinationStartedAt > LOGS_END) return [];
  const ended = batch.germinationEndedAt <= LOGS_END;
  const kernels = r.weighted([
    [100, 0.85],
    [50, 0.15],
  ] as const);
  const skipped = r.chance(0.07);
  const moisture = batch.greenMoisturePercent + 0.35 * r.normal();
  return batch.beds.map((bed, i) => ({
    run: planned.run,
    bed: bedOf(planned, i),
    started_at: localText(batch.germinationStartedAt),
    ended_at: at(batch.germinationEndedAt),
    bed_grain_kg:
      batch.beds.length > 1
        ? numberText(
            i === 0 ? 5 * Math.round(grainKilograms / 10) : grainKilograms - 5 * Math.round(grainKilograms / 10),
            0,
          )
        : "",
    room_c: numberText(bed.roomCelsius + 0.2 * r.normal(), 1),
    bed_mean_c: ended ? numberText(bed.meanCelsius + 0.15 * r.normal(), 1) : "",
    bed_max_c: ended ? numberText(bed.maxCelsius + 0.15 * r.normal(), 1) : "",
    turns: ended ? String(batch.turns) : "",
    ...(ended && !skipped ? counted(countAcrospires(batch, batch.acrospire[i] ?? 0.75, kernels, r)) : {}),
    green_moisture_pct: ended ? numberText(moisture + 0.2 * i, 1) : "",
    note: "",
  }));
}

/** In some runs kernels were counted on the way too, on the second, third and fourth day. */
export function logAcrospireCounts(seed: number, batch: Batch): Row[] {
  const { planned } = batch;
  const r = randomStream(seed, "acrospire-log", planned.index);
  if (!r.chance(0.2)) return [];
  const rows: Row[] = [];
  const bed = batch.beds[0];
  if (!bed) return [];
  const growthNow =
    ((batch.acrospire[0] ?? 0.75) + 0.08) /
    ((bed.meanCelsius - 2) * ((batch.germinationEndedAt - batch.germinationStartedAt) / HOUR));
  for (const day of r.chance(0.75) ? [2, 3] : [3]) {
    const when = toFiveMinutes(batch.germinationStartedAt + (24 * day - 8 + r.normal()) * HOUR);
    if (when > LOGS_END) continue;
    const length = acrospireAt(growthNow, bed.meanCelsius, (when - batch.germinationStartedAt) / HOUR);
    rows.push({
      run: planned.run,
      bed: bedOf(planned, 0),
      counted_at: localText(when),
      ...counted(countAcrospires(batch, length, 100, r)),
    });
  }
  return rows;
}

/** Dry matter of a batch's grain as it goes into the kiln, kg. */
export function greenDryMatter(batch: Batch, grainKilograms: number): number {
  return dryMatterKilograms(grainKilograms, batch.planned.lot.moisturePercent) * (1 - batch.lossBeforeKiln);
}
