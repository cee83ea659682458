import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { logFolder } from "../../engine/logFolder.ts";
import { readLogs } from "../../tables/readLogs.ts";
import { sharedPagesOf } from "./sharedPagesOf.ts";
import type { SharedPagesResult } from "./sharedPagesResult.ts";

const FILES = new Set(["house.toml", "customers.csv", "deliveries.csv"]);

/** Who sees what, of the folder that the build was started with. */
export async function getSharedPages(passes: SharedPagesResult["passes"]): Promise<SharedPagesResult> {
  const folder = process.env.PIECEBOOK_LOGS ?? "data/demo";
  const { tables } = await readLogs(logFolder(folder).filter(({ path }) => FILES.has(path)));
  const record = join(folder, ".shared.json");
  return sharedPagesOf(tables, existsSync(record) ? readFileSync(record, "utf8") : null, passes);
}
