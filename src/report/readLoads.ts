import type { Database } from "../engine/database.ts";
import { type AirColumns, intakeAir } from "./intakeAir.ts";
import type { LoadRow } from "./loadRow.ts";
import { isPowerLimited } from "./powerLimited.ts";

import type { RowFilter } from "./rowFilter.ts";
import { selectAs, whereRows } from "./whereRows.ts";

/** A load as `load_rows` and `load_readings` have it; the air is put together afterwards. */
type StoredLoad = Omit<LoadRow, "airAtLoading" | "airOverLoad" | "powerLimited">;

/** Where each field stands; the types ask for every one. */
const columns: Readonly<Record<keyof StoredLoad, string>> = {
  load: "load",
  kiln: "kiln",
  runs: "runs",
  variety: "variety",
  grain: "grain",
  loadedAt: "loaded_at",
  cureStartedAt: "cure_started_at",
  heatOffAt: "heat_off_at",
  unloadedAt: "unloaded_at",
  kilnHours: "kiln_hours",
  dryingHours: "drying_hours",
  bedDepthMetres: "bed_depth_m",
  grainInKilograms: "grain_in_kg",
  grainMoisturePercent: "grain_moisture_pct",
  greenLoadKilograms: "green_load_kg",
  greenMoisturePercent: "green_moisture_pct",
  dryingSetCelsius: "drying_set_c",
  cureSetCelsius: "cure_set_c",
  finalMoisturePercent: "final_moisture_pct",
  maltOutKilograms: "malt_out_kg",
  waterRemovedKilograms: "water_removed_kg",
  energyKilowattHours: "energy_kwh",
  powerLimitedShare: "power_limited_share",
  fanShareOfHold: "fan_share_of_hold",
  readingsFile: "readings_file",
};

const airColumns: Readonly<Record<keyof AirColumns, string>> = {
  loggedAtLoadingHumidity: "logged_at_loading_rh_pct",
  loggedAtLoadingCelsius: "logged_at_loading_c",
  loggedOverLoadHumidity: "logged_over_load_rh_pct",
  loggedOverLoadCelsius: "logged_over_load_c",
  weatherAtLoadingHumidity: "weather_at_loading_rh_pct",
  weatherAtLoadingCelsius: "weather_at_loading_c",
  weatherOverLoadHumidity: "weather_over_load_rh_pct",
  weatherOverLoadCelsius: "weather_over_load_c",
};

function pick<Keys extends string, Row extends Readonly<Record<Keys, unknown>>>(
  row: Row,
  names: Readonly<Record<Keys, string>>,
): Pick<Row, Keys> {
  return Object.fromEntries((Object.keys(names) as Keys[]).map((name) => [name, row[name]])) as Pick<Row, Keys>;
}

/**
 * The kiln loads that `filter` lets through, earliest first, then by kiln. A variety lets through the loads that hold
 * nothing else. The logs must have been joined (`joinLogs`).
 */
export async function readLoads(database: Database, filter: RowFilter): Promise<readonly LoadRow[]> {
  const rows = await database.query<StoredLoad & AirColumns>(
    `SELECT ${selectAs({ ...columns, ...airColumns })} FROM load_rows LEFT JOIN load_readings USING (load)
    ${whereRows(filter, "loaded_at")} ORDER BY loaded_at, kiln, load`,
  );
  return rows.map((row) => ({
    ...pick(row, columns),
    ...intakeAir(row),
    powerLimited: isPowerLimited(row.powerLimitedShare),
  }));
}
