import type { TableName } from "../../tables/declarations.ts";
import type { Table } from "../../tables/table.ts";
import { customersOf, deliveriesOf } from "./readSharingSources.ts";
import type { SharedBefore } from "./sharedBefore.ts";
import type { SharedPagesResult } from "./sharedPagesResult.ts";

/** The record of the last share as it was found: its text, or null where there is none. */
export function parseRecord(
  text: string | null,
): Pick<SharedPagesResult, "recordFault"> & { readonly record: SharedBefore | null } {
  if (text === null) return { record: null, recordFault: null };
  try {
    const found = JSON.parse(text) as SharedBefore;
    if (found.version === 1 && typeof found.customers === "object") return { record: found, recordFault: null };
  } catch {
    // Said below.
  }
  return { record: null, recordFault: "The record of the last share, .shared.json, cannot be read." };
}

/**
 * Who sees what, from the logs as they are and the record of the last share.
 *
 * @param passes what the projection lets through, for the page to list
 */
export function sharedPagesOf(
  tables: ReadonlyMap<TableName, Table>,
  recordText: string | null,
  passes: SharedPagesResult["passes"],
): SharedPagesResult {
  const { record, recordFault } = parseRecord(recordText);
  const malt = deliveriesOf(tables.get("deliveries")).filter(({ product }) => product === "malt");
  const customers = customersOf(tables.get("customers")).map(({ customer, share }) => {
    const sent = malt.filter((row) => row.customer === customer);
    const before = record?.customers[customer];
    return {
      customer,
      shares: share,
      batchesSent: new Set(sent.map(({ run }) => run)).size,
      lastSentOn: sent.length === 0 ? null : Math.max(...sent.map(({ shippedOn }) => shippedOn)),
      shown:
        before === undefined
          ? null
          : { since: before.since, sealed: before.sealed, runs: Object.keys(before.batches).sort() },
    };
  });
  const last = record === null ? null : { on: record.on, changes: record.changes, inQuestion: record.inQuestion };
  return { customers, last, recordFault, passes };
}
