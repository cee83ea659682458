import type { CsvTable } from "../tables/csvTable.ts";
import type { TableName } from "../tables/declarations.ts";
import type { Table } from "../tables/table.ts";
import { tableToCsv } from "../tables/writeCsv.ts";

/**
 * Every column that leaves the house with the site, by table and inside name. What is not named here is never written:
 * customers' names and link keys, notes about lots, orders, deliveries and customers. Notes on the stages of a run do pass,
 * since the run's page shows them.
 *
 * Raw readings are not among the tables: each load's own file and `load_readings` (publishReadings.ts) take their place.
 */
export const publishedColumns: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  "grain-lots": [
    "lot",
    "grain",
    "variety",
    "crop_year",
    "grower",
    "received_on",
    "mass_kg",
    "moisture_pct",
    "protein_dry_pct",
    "germinative_energy_pct",
    "plump_pct",
    "don_mg_kg",
  ],
  steeping: [
    "run",
    "lot",
    "tank",
    "grain_in_kg",
    "grain_moisture_pct",
    "started_at",
    "ended_at",
    "water_c",
    "wet_hours",
    "air_rest_hours",
    "steep_out_kg",
    "steep_out_moisture_pct",
    "chitted_pct",
    "note",
  ],
  germination: [
    "run",
    "bed",
    "started_at",
    "ended_at",
    "bed_grain_kg",
    "room_c",
    "bed_mean_c",
    "bed_max_c",
    "turns",
    "acrospire_none",
    "acrospire_to_quarter",
    "acrospire_to_half",
    "acrospire_to_three_quarters",
    "acrospire_to_full",
    "acrospire_over",
    "green_moisture_pct",
    "note",
  ],
  "acrospire-counts": [
    "run",
    "bed",
    "counted_at",
    "acrospire_none",
    "acrospire_to_quarter",
    "acrospire_to_half",
    "acrospire_to_three_quarters",
    "acrospire_to_full",
    "acrospire_over",
  ],
  kilning: [
    "run",
    "kiln",
    "load",
    "loaded_at",
    "cure_started_at",
    "heat_off_at",
    "unloaded_at",
    "bed_depth_m",
    "green_load_kg",
    "ambient_rh_pct",
    "ambient_c",
    "ambient_basis",
    "outside_rh_pct",
    "outside_c",
    "drying_set_c",
    "cure_set_c",
    "fan_set_c",
    "final_moisture_pct",
    "malt_out_kg",
    "cleaned_out_kg",
    "rootlets_kg",
    "energy_kwh",
    "bag_code",
    "note",
  ],
  "moisture-samples": ["run", "place", "moisture_pct"],
  weather: ["at", "ambient_rh_pct", "ambient_c"],
  "logger-checks": ["kiln", "at", "probe", "reference_c", "reading_c", "note"],
  lab: [
    "run",
    "tested_on",
    "laboratory",
    "method_set",
    "moisture_pct",
    "extract_fine_dry_pct",
    "extract_coarse_dry_pct",
    "colour_ebc",
    "diastatic_power_wk",
    "alpha_amylase_du",
    "protein_dry_pct",
    "soluble_total_protein_pct",
    "fan_mg_l",
    "beta_glucan_mg_l",
    "friability_pct",
    "viscosity_mpa_s",
    "ph",
    "don_mg_kg",
  ],
  orders: ["order", "customer", "variety", "mass_kg", "due_on"],
  deliveries: ["delivery", "customer", "run", "shipped_on", "mass_kg", "package_kind", "package_count", "product"],
  customers: ["customer", "share"],
  events: ["on", "kind", "scope", "what", "alters"],
  targets: ["variety", "measure", "low", "target", "high"],
};

const emptyTable = (name: TableName): Table => ({
  name,
  rowCount: 0,
  columns: new Map(),
  writtenUnits: new Map(),
  unknownColumns: new Map(),
  files: [],
  fileOfRow: new Uint16Array(0),
  lineOfRow: new Int32Array(0),
});

/**
 * The tables as the build writes them and the engine loads them, in Node and in the browser alike: all published tables,
 * also those that the logs lack (without rows), each with all its columns; a column that may not leave the house is there
 * and empty.
 *
 * @param tables as `readLogs` gives them
 */
export function publishedTables(tables: ReadonlyMap<TableName, Table>): readonly CsvTable[] {
  return (Object.keys(publishedColumns) as TableName[]).map((name) => {
    const table = tables.get(name) ?? emptyTable(name);
    const columns = new Map([...table.columns].filter(([column]) => publishedColumns[name]?.includes(column)));
    return tableToCsv({ ...table, columns });
  });
}
