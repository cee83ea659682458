import type { Database } from "../engine/database.ts";
import type { TargetRow } from "./targetRow.ts";

/** Everything targets.csv says, in a fixed order. */
export function readTargets(database: Database): Promise<readonly TargetRow[]> {
  return database.query<TargetRow>(
    "SELECT variety, measure, low, target, high FROM targets ORDER BY measure, variety, low, target, high",
  );
}
