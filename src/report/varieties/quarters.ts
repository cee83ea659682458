import { twoSample } from "../../analysis/beforeAfter/twoSample.ts";
import { falseDiscoveryAdjusted } from "../../analysis/falseDiscovery.ts";
import { mean } from "../../analysis/summary.ts";
import type { LoadRow } from "../loadRow.ts";
import type { RunRow } from "../runRow.ts";
import type { VarietyDetail } from "../varietiesResult.ts";
import type { HeldMeasure, VarietyGround } from "./ground.ts";
import type { LotRow } from "./readLots.ts";

/** A quarter of fewer batches than this is not compared. */
const FEWEST_EACH = 4;
const HOUR = 3_600_000;

interface Looked {
  readonly row: RunRow;
  readonly load: LoadRow | null;
  readonly lot: LotRow | null;
}

const hoursBetween = (from: number | null, to: number | null): number | null =>
  from === null || to === null ? null : (to - from) / HOUR;

/** What is known of a batch beside what it is judged by, by the column's name inside. */
const columns: Readonly<Record<string, (looked: Looked) => number | null>> = {
  crop_year: ({ lot, row }) => lot?.cropYear ?? row.cropYear,
  germinative_energy_pct: ({ lot }) => lot?.germinativeEnergyPercent ?? null,
  plump_pct: ({ lot }) => lot?.plumpPercent ?? null,
  grain_protein_dry_pct: ({ row }) => row.grainProteinDryPercent,
  grain_moisture_pct: ({ row }) => row.grainMoisturePercent,
  grain_in_kg: ({ row }) => row.grainInKilograms,
  steep_water_c: ({ row }) => row.steepWaterCelsius,
  steep_wet_hours: ({ row }) => row.steepWetHours,
  steep_air_rest_hours: ({ row }) => row.steepAirRestHours,
  chitted_pct: ({ row }) => row.chittedPercent,
  germination_hours: ({ row }) => hoursBetween(row.germinationStartedAt, row.germinationEndedAt),
  room_c: ({ row }) => row.roomCelsius,
  bed_mean_c: ({ row }) => row.bedMeanCelsius,
  bed_max_c: ({ row }) => row.bedMaxCelsius,
  turns: ({ row }) => row.turns,
  green_moisture_pct: ({ row }) => row.greenMoisturePercent,
  bed_depth_m: ({ row }) => row.bedDepthMetres,
  green_load_kg: ({ row }) => row.greenLoadKilograms,
  ambient_rh_pct: ({ load }) => load?.airAtLoading?.relativeHumidityPercent ?? null,
  ambient_c: ({ load }) => load?.airAtLoading?.celsius ?? null,
};

/** How far a value lies from what is aimed at, 1 at the limit, on the measure's scale. */
function awayFromAim({ limits, scale }: HeldMeasure, value: number): number {
  const scaled = scale.to(value);
  if (scaled === null) return 0;
  const { low, high, below, above } = limits;
  const aim = Number.isFinite(low) ? low + below : high - above;
  if (!Number.isFinite(aim)) return 0;
  return scaled > aim ? (scaled - aim) / above : (aim - scaled) / below;
}

/**
 * What differs between the quarter of a variety's batches that lay nearest to what is aimed at and the quarter that lay
 * furthest, each batch by its worst measure. Every column that both quarters logged four times is looked at, and
 * probabilities are corrected for that (Benjamini and Hochberg); the surest first.
 *
 * @returns null for fewer than 16 batches
 */
export function quarters(
  { batches, counted, judged }: VarietyGround,
  loads: ReadonlyMap<string, LoadRow>,
  lots: ReadonlyMap<string, LotRow>,
): VarietyDetail["quarters"] {
  const ranked = batches
    .flatMap((batch, at) => {
      if (judged[at]?.met === null || counted.length === 0) return [];
      const away = counted.map((held) => awayFromAim(held, batch.valueOf(held.tolerance.measure) as number));
      const { row } = batch;
      const looked: Looked = {
        row,
        load: row.load === null ? null : (loads.get(row.load) ?? null),
        lot: row.lot === null ? null : (lots.get(row.lot) ?? null),
      };
      return [{ looked, away: Math.max(...away) }];
    })
    .sort((a, b) => a.away - b.away);
  const each = Math.floor(ranked.length / 4);
  if (each < FEWEST_EACH) return null;
  const found = Object.entries(columns).flatMap(([column, read]) => {
    const known = (part: typeof ranked): number[] =>
      part.map(({ looked }) => read(looked)).filter((value) => value !== null);
    const [best, worst] = [known(ranked.slice(0, each)), known(ranked.slice(-each))];
    if (best.length < FEWEST_EACH || worst.length < FEWEST_EACH) return [];
    if (best.every((value) => value === best[0]) && worst.every((value) => value === worst[0])) return [];
    const { estimate, low, high, p } = twoSample(best, worst);
    return [{ column, best: mean(best), worst: mean(worst), difference: { estimate, low, high }, p }];
  });
  const corrected = falseDiscoveryAdjusted(found.map(({ p }) => p));
  const differences = found
    .map((difference, at) => ({ ...difference, correctedP: corrected[at] as number }))
    .sort((a, b) => a.p - b.p || (a.column < b.column ? -1 : 1));
  return { each, lookedAt: found.length, differences };
}
