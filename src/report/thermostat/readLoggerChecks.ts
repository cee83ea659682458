import type { Database } from "../../engine/database.ts";
import type { LoggerCheck } from "../../malting/thermostat/loggerChecks.ts";

export type LoggedCheck = LoggerCheck & { readonly note: string | null };

/** Every check of the kiln logger, in time order. */
export function readLoggerChecks(database: Database): Promise<readonly LoggedCheck[]> {
  return database.query<LoggedCheck>(
    `SELECT kiln, "at", probe, reference_c AS "referenceCelsius", reading_c AS "readingCelsius", note
    FROM logger_checks ORDER BY "at", kiln, probe, reference_c`,
  );
}
