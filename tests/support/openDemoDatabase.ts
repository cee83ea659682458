import { DEMO_LOGS } from "../../scripts/buildSite.ts";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { joinLogs } from "../../src/engine/joinLogs.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { houseTime } from "../../src/engine/sql/houseTime.ts";
import { reportFromFolder } from "../../src/report/atBuild.ts";
import type { PublishedLogs } from "../../src/report/publishedLogs.ts";

/** The invented house's published tables in Node's engine, joined, as the browser's worker has them. */
export async function openDemoDatabase(): Promise<LoadableDatabase> {
  const { files, publishedFile } = await reportFromFolder(DEMO_LOGS);
  const published = JSON.parse(new TextDecoder().decode(files.get(publishedFile))) as PublishedLogs;
  const database = await openNodeDatabase(
    published.tables.map(({ name, columns, file }) => ({ name, columns, csv: files.get(file) ?? new Uint8Array() })),
  );
  await joinLogs(database);
  await database.query(houseTime(published.house.timeZone));
  return database;
}
