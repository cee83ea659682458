import { randomStream } from "./random.ts";
import type { Row } from "./rows.ts";
import { LOG_SLIPS } from "./truths.ts";

/** Columns that a hurried hand leaves out, and how often. */
const FORGOTTEN: readonly (readonly [table: "steeping" | "germination" | "kilning", column: string, chance: number])[] =
  [
    ["steeping", "water_c", 0.04],
    ["steeping", "steep_out_kg", 0.04],
    ["steeping", "chitted_pct", 0.12],
    ["germination", "room_c", 0.05],
    ["germination", "bed_max_c", 0.06],
    ["germination", "green_moisture_pct", 0.06],
    ["kilning", "bed_depth_cm", 0.02],
    ["kilning", "ambient_rh_pct", 0.04],
    ["kilning", "green_load_kg", 0.03],
    ["kilning", "drying_set_c", 0.02],
    ["kilning", "rootlets_kg", 0.06],
    ["kilning", "energy_kwh", 0.05],
  ];

export interface SlippedTables {
  readonly steeping: Row[];
  readonly germination: Row[];
  readonly kilning: Row[];
}

/**
 * Cells left blank as in any log, and the few slips of the pen that {@link LOG_SLIPS} names.
 *
 * @param ofThePen false: the blanks alone
 */
export function addSlips(seed: number, tables: SlippedTables, ofThePen = true): void {
  for (const [number, [table, column, chance]] of FORGOTTEN.entries()) {
    const r = randomStream(seed, "forgotten", number);
    for (const row of tables[table]) {
      if (r.chance(chance)) row[column] = "";
    }
  }
  if (!ofThePen) return;
  const { monthThirteen, moistureWithoutPoint } = LOG_SLIPS;
  const typo = tables.kilning.find((row) => row.load === monthThirteen.load);
  if (typo?.loaded_at) typo.loaded_at = typo.loaded_at.replace(/-\d\d-/, "-13-");
  const wet = tables.germination.find((row) => row.run?.endsWith(moistureWithoutPoint.run) && row.ended_at);
  if (wet) wet.green_moisture_pct = moistureWithoutPoint.written;
}
