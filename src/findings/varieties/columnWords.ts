import { maltMeasure } from "../../units/maltMeasure.ts";
import type { Quantity } from "../../units/quantity.ts";

/** A column of the logs as a page says it. */
export interface ColumnWords {
  readonly words: string;
  readonly quantity: Quantity;
  readonly difference: Quantity;
}

const same = (words: string, quantity: Quantity, difference = quantity): ColumnWords => ({
  words,
  quantity,
  difference,
});
const share = (words: string): ColumnWords => same(words, "percent", "percentagePoints");
const degrees = (words: string): ColumnWords => same(words, "temperature", "temperatureDifference");

const known: Readonly<Record<string, ColumnWords>> = {
  grain_moisture_pct: share("grain moisture"),
  grain_protein_dry_pct: share("grain protein, dry basis"),
  protein_dry_pct: share("grain protein, dry basis"),
  germinative_energy_pct: share("germinative energy"),
  plump_pct: share("plump share"),
  grain_in_kg: same("grain in", "mass"),
  crop_year: same("crop year", "count"),
  water_c: degrees("steep water"),
  steep_water_c: degrees("steep water"),
  steep_wet_hours: same("wet hours", "hours"),
  steep_air_rest_hours: same("air-rest hours", "hours"),
  steep_out_moisture_pct: share("steep-out moisture"),
  chitted_pct: share("chitted"),
  bed_mean_c: degrees("bed temperature, mean"),
  bed_max_c: degrees("bed temperature, highest"),
  room_c: degrees("room temperature"),
  turns: same("turns", "count"),
  green_moisture_pct: share("green malt’s moisture"),
  bed_depth_m: same("bed depth", "bedDepth"),
  green_load_kg: same("green load", "mass"),
  kiln_hours: same("kiln hours", "hours"),
  drying_hours: same("drying hours", "hours"),
  germination_hours: same("germination hours", "hours"),
  ambient_rh_pct: share("humidity of the air"),
  ambient_c: degrees("temperature of the air"),
};

/** How a column is called and counted; one that is not known keeps its own name and has no unit. */
export function columnWords(column: string): ColumnWords {
  return Object.hasOwn(known, column) ? (known[column] ?? maltMeasure(column)) : maltMeasure(column);
}
