import type { Database } from "../../engine/database.ts";

/** Grain as it was received. */
export interface LotRow {
  readonly lot: string;
  readonly variety: string;
  readonly cropYear: number | null;
  readonly grower: string | null;
  readonly moisturePercent: number | null;
  readonly proteinDryPercent: number | null;
  readonly germinativeEnergyPercent: number | null;
  readonly plumpPercent: number | null;
}

/** Every lot by name; of a lot that was written down twice, the first. */
export function readLots(database: Database): Promise<readonly LotRow[]> {
  return database.query<LotRow>(
    `SELECT lot, variety, crop_year AS "cropYear", grower, moisture_pct AS "moisturePercent",
      protein_dry_pct AS "proteinDryPercent", germinative_energy_pct AS "germinativeEnergyPercent",
      plump_pct AS "plumpPercent"
    FROM grain_lots QUALIFY row_number() OVER (PARTITION BY lot ORDER BY rowid) = 1 ORDER BY lot`,
  );
}
