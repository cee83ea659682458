import { existsSync } from "node:fs";
import { join } from "node:path";
import { logFolder } from "../../src/engine/logFolder.ts";
import { customersOf } from "../../src/report/sharing/readSharingSources.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import type { Preview } from "../siteServer.ts";

/** The pages of the last share, for the house to look at: those whose folder is where `shared` says. Null where there are none. */
export async function previewOf(logs: string, shared: string): Promise<Preview | null> {
  if (!existsSync(shared)) return null;
  const files = logFolder(logs).filter(({ path }) => path === "customers.csv" || path === "house.toml");
  const { tables } = await readLogs(files);
  const keys = customersOf(tables.get("customers")).flatMap(({ customer, linkKey }) =>
    linkKey !== null && existsSync(join(shared, linkKey, "index.html")) ? [[customer, linkKey] as const] : [],
  );
  return keys.length === 0 ? null : { folder: shared, keys: new Map(keys) };
}
