import type { Database } from "../engine/database.ts";
import type { EventRow } from "./eventRow.ts";

/** Every logged event, earliest first, whatever the view: a reader who looks at two months still wants to know of them. */
export function readEvents(database: Database): Promise<readonly EventRow[]> {
  return database.query<EventRow>(
    `SELECT "on", kind, scope, what, alters FROM events ORDER BY "on", kind, scope, what`,
  );
}
