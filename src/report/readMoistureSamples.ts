import type { Database } from "../engine/database.ts";

/** The moisture samples of each run, per cent, in a fixed order. */
export async function readMoistureSamples(database: Database): Promise<ReadonlyMap<string, readonly number[]>> {
  const rows = await database.query<{ run: string; moisture: number }>(
    `SELECT run, moisture_pct AS moisture FROM moisture_samples WHERE moisture_pct IS NOT NULL
    ORDER BY run, place, moisture_pct`,
  );
  const samples = new Map<string, number[]>();
  for (const { run, moisture } of rows) {
    const own = samples.get(run);
    if (own) own.push(moisture);
    else samples.set(run, [moisture]);
  }
  return samples;
}
