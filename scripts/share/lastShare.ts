import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { ShareChange, SharedBefore } from "../../src/report/sharing/sharedBefore.ts";
import { parseRecord } from "../../src/report/sharing/sharedPagesOf.ts";

/** The record of the last share, beside the logs: a hidden file, so that nobody takes it for a log. */
export const LAST_SHARE_FILE = ".shared.json";

/**
 * What was shared last, or null where nothing was.
 *
 * @throws {RangeError} for a file that no share wrote
 */
export function readLastShare(logs: string): SharedBefore | null {
  const path = join(logs, LAST_SHARE_FILE);
  if (!existsSync(path)) return null;
  const { record } = parseRecord(readFileSync(path, "utf8"));
  if (record !== null) return record;
  throw new RangeError(`${path} is not a record of a share: put back a copy of it, or take it away and share anew`);
}

/** Written beside and put in place at once, so that a stop in between leaves the old record. */
export function writeLastShare(logs: string, share: SharedBefore): void {
  const path = join(logs, LAST_SHARE_FILE);
  writeFileSync(`${path}.new`, `${JSON.stringify(share, null, 1)}\n`);
  renameSync(`${path}.new`, path);
}

/** What is otherwise than at the last share, customer by customer. */
export function listChanges(before: SharedBefore | null, now: Pick<SharedBefore, "customers">): readonly ShareChange[] {
  const changes: ShareChange[] = [];
  const customers = new Set([...Object.keys(before?.customers ?? {}), ...Object.keys(now.customers)]);
  for (const customer of [...customers].sort()) {
    const old = before?.customers[customer]?.batches ?? {};
    const fresh = now.customers[customer]?.batches ?? {};
    for (const run of [...new Set([...Object.keys(old), ...Object.keys(fresh)])].sort()) {
      const [was, is] = [old[run], fresh[run]];
      if (was === undefined) changes.push({ customer, run, kind: "added", figures: [] });
      else if (is === undefined) changes.push({ customer, run, kind: "taken-back", figures: [] });
      else {
        const names = [...new Set([...Object.keys(was), ...Object.keys(is)])];
        const figures = names
          .filter((name) => was[name] !== is[name])
          .map((name) => ({ name, was: was[name] ?? "not shown", is: is[name] ?? "not shown" }));
        if (figures.length > 0) changes.push({ customer, run, kind: "altered", figures });
      }
    }
  }
  return changes;
}
