import type { Database } from "./database.ts";
import { germinationRuns } from "./sql/germinationRuns.ts";
import { kilnRows } from "./sql/kilnRows.ts";
import { loadRows } from "./sql/loadRows.ts";
import { loadWeather } from "./sql/loadWeather.ts";
import { runRows } from "./sql/runRows.ts";
import { steepRuns } from "./sql/steepRuns.ts";

/** Each needs those before it. */
const steps = [steepRuns, germinationRuns, kilnRows, loadWeather, loadRows, runRows] as const;

/** Where no reading belongs to any load, or nobody has looked yet, the table stands empty. */
const emptyLoadReadings = `
CREATE TABLE IF NOT EXISTS load_readings (
  load VARCHAR, readings INTEGER, power_limited_share DOUBLE, fan_share_of_hold DOUBLE, readings_file VARCHAR)`;

/**
 * Joins the log tables of `database` into `run_rows` (one row a batch) and `load_rows` (one row a firing of a kiln), and
 * again after other tables were loaded. The joins are kept as tables, so that every filter afterwards reads them as they are.
 *
 * Needs the tables of the log format under their inside names: grain_lots, steeping, germination, kilning,
 * moisture_samples, lab and weather, each with all its columns, rows or none.
 */
export async function joinLogs(database: Database): Promise<void> {
  for (const step of [...steps, emptyLoadReadings]) await database.query(step);
}
