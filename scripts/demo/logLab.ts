import type { Batch } from "./batch.ts";
import { DAY, localDate } from "./clock.ts";
import { randomStream } from "./random.ts";
import { LOGS_END, numberText, type Row } from "./rows.ts";
import type { SimulatedLoad } from "./simulateHouse.ts";

/** A third of the batches went to an outside laboratory, invented like the rest. */
export function logLab(seed: number, load: SimulatedLoad): Row[] {
  return load.batches.flatMap((batch) => {
    const r = randomStream(seed, "lab", batch.planned.index);
    if (!r.chance(0.34)) return [];
    const sentOn = load.fired.unloadedAt + r.integer(7, 15) * DAY;
    if (sentOn > LOGS_END) return [];
    return [certificate(batch, load.fired.finalMoisturePercent, localDate(sentOn), r)];
  });
}

/**
 * Values about what the trade calls usual for the grain, moved by protein, modification and cure as maltsters expect:
 * more protein, less extract; longer acrospire, more soluble protein, less beta-glucan and a smaller fine-coarse gap.
 */
function certificate(batch: Batch, moisture: number, testedOn: string, r: ReturnType<typeof randomStream>): Row {
  const { variety, lot } = batch.planned;
  const barley = variety.grain === "barley";
  const length = batch.acrospire.reduce((sum, l) => sum + l, 0) / batch.acrospire.length;
  const grown = (length - 0.78) / 0.1;
  const protein = lot.proteinDryPercent - 0.2 + 0.15 * r.normal();
  const fine =
    variety.extractDryPercent -
    0.75 * (protein - variety.proteinDryPercent) -
    0.5 * (lot.unevenness - 1) +
    0.3 * r.normal();
  const gap = Math.max(0.3, (barley ? 1.1 : 1.4) - 0.25 * grown + 0.3 * (lot.unevenness - 1) + 0.15 * r.normal());
  return {
    run: batch.planned.run,
    tested_on: testedOn,
    laboratory: "Brennick laboratory",
    method_set: "EBC",
    moisture_pct: numberText(moisture + 0.12 + 0.08 * r.normal(), 1),
    extract_fine_dry_pct: numberText(fine, 1),
    extract_coarse_dry_pct: numberText(fine - gap, 1),
    colour_ebc: numberText(variety.colourEbc + 0.25 * grown + 0.2 * r.normal(), 1),
    diastatic_power_wk: numberText(
      (barley ? 285 : 320) + 18 * (protein - variety.proteinDryPercent) + 14 * r.normal(),
      0,
    ),
    alpha_amylase_du: numberText((barley ? 58 : 48) + 3 * grown + 3 * r.normal(), 0),
    protein_dry_pct: numberText(protein, 1),
    soluble_total_protein_pct: numberText((barley ? 41 : 38.5) + 1.4 * grown + 0.9 * r.normal(), 1),
    fan_mg_l: numberText((barley ? 152 : 128) + 7 * grown + 6 * r.normal(), 0),
    beta_glucan_mg_l: barley
      ? numberText(Math.max(25, 128 - 26 * grown + 45 * (lot.unevenness - 1) + 14 * r.normal()), 0)
      : "",
    friability_pct: barley
      ? numberText(Math.min(97, 86 + 2.5 * grown - 5 * (lot.unevenness - 1) + 1.6 * r.normal()), 0)
      : "",
    viscosity_mpa_s: numberText((barley ? 1.5 : 1.72) - 0.015 * grown + 0.02 * r.normal(), 2),
    ph: numberText((barley ? 5.86 : 5.95) - 0.01 * grown + 0.03 * r.normal(), 2),
    don_mg_kg: lot.donMgKg === null ? "" : numberText(Math.max(0.03, lot.donMgKg * (0.6 + 0.2 * r.uniform())), 2),
  };
}
