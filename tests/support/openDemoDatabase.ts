import { DEMO_LOGS } from "../../scripts/buildSite.ts";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { logFolder } from "../../src/engine/logFolder.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { houseTime } from "../../src/engine/sql/houseTime.ts";
import { enterLogs } from "../../src/report/enterLogs.ts";

/** The invented house's published tables in Node's engine, joined, as the browser's worker has them. */
export async function openDemoDatabase(): Promise<LoadableDatabase> {
  const database = await openNodeDatabase([]);
  const { published } = await enterLogs(logFolder(DEMO_LOGS), database, { invented: true });
  await database.query(houseTime(published.house.timeZone));
  return database;
}
