import type { Database } from "../../engine/database.ts";

/** What each load's fan was set to, where a fan has a thermostat of its own; the mean of a load's rows, which should agree. */
export async function readFanSets(database: Database): Promise<ReadonlyMap<string, number>> {
  const rows = await database.query<{ load: string; celsius: number }>(
    `SELECT load_id AS load, avg(fan_set_c) AS celsius FROM kiln_rows WHERE fan_set_c IS NOT NULL
    GROUP BY load_id ORDER BY load_id`,
  );
  return new Map(rows.map(({ load, celsius }) => [load, celsius]));
}
