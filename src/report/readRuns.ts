import type { Database } from "../engine/database.ts";
import type { RowFilter } from "./rowFilter.ts";
import type { RunRow } from "./runRow.ts";
import { selectAs, whereRows } from "./whereRows.ts";

/** Where each field stands in `run_rows`; the type asks for every one. */
const columns: Readonly<Record<keyof RunRow, string>> = {
  run: "run",
  lot: "lot",
  lots: "lots",
  grain: "grain",
  variety: "variety",
  grower: "grower",
  cropYear: "crop_year",
  grainInKilograms: "grain_in_kg",
  grainMoisturePercent: "grain_moisture_pct",
  grainProteinDryPercent: "grain_protein_dry_pct",

  steepStartedAt: "steep_started_at",
  steepEndedAt: "steep_ended_at",
  steepWaterCelsius: "steep_water_c",
  steepWetHours: "steep_wet_hours",
  steepAirRestHours: "steep_air_rest_hours",
  steepOutKilograms: "steep_out_kg",
  steepOutMoisturePercent: "steep_out_moisture_pct",
  steepOutMoistureBasis: "steep_out_moisture_basis",
  chittedPercent: "chitted_pct",
  tanks: "tanks",

  germinationStartedAt: "germination_started_at",
  germinationEndedAt: "germination_ended_at",
  bedMeanCelsius: "bed_mean_c",
  bedMaxCelsius: "bed_max_c",
  roomCelsius: "room_c",
  turns: "turns",
  greenMoisturePercent: "green_moisture_pct",
  acrospireMean: "acrospire_mean",
  acrospireOvergrownPercent: "acrospire_overgrown_pct",
  acrospireCounted: "acrospire_counted",
  beds: "beds",

  load: "load",
  loads: "loads",
  kiln: "kiln",
  loadedAt: "loaded_at",
  cureStartedAt: "cure_started_at",
  heatOffAt: "heat_off_at",
  unloadedAt: "unloaded_at",
  kilnHours: "kiln_hours",
  dryingHours: "drying_hours",
  bedDepthMetres: "bed_depth_m",
  greenLoadKilograms: "green_load_kg",
  finalMoisturePercent: "final_moisture_pct",
  finalMoistureBasis: "final_moisture_basis",
  maltOutKilograms: "malt_out_kg",
  maltKilograms: "malt_kg",
  maltBasis: "malt_basis",
  rootletsKilograms: "rootlets_kg",
  dryMatterYieldPercent: "dry_matter_yield_pct",
  asIsYieldPercent: "as_is_yield_pct",
  waterRemovedKilograms: "water_removed_kg",
  energyKilowattHours: "energy_kwh",
  bagCode: "bag_code",
  notes: "notes",
};

/**
 * The runs that `filter` lets through, latest first: by loading, and before that by the start of the stage they are in.
 * A run that has not been loaded yet is dated by that start. The logs must have been joined (`joinLogs`).
 */
export function readRuns(database: Database, filter: RowFilter): Promise<readonly RunRow[]> {
  return database.query<RunRow>(
    `SELECT ${selectAs(columns)} FROM run_rows ${whereRows(filter, "sorted_at")} ORDER BY sorted_at DESC, run DESC`,
  );
}
