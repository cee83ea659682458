import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { quoteName } from "../../src/engine/quote.ts";
import { analyseParts } from "../../src/report/analyseParts.ts";
import { enterLogs } from "../../src/report/enterLogs.ts";
import { readLoggedRows, wholeRows } from "../../src/report/loggedRows.ts";
import type { ReviewResult } from "../../src/report/reviewResult.ts";
import { wholeView } from "../../src/report/view.ts";
import type { LogFile } from "../../src/tables/logFile.ts";
import type { SimulatedHouse } from "../demo/simulateHouse.ts";
import { writeLogs } from "../demo/writeLogs.ts";

/** Where simulated houses are reviewed one after the other: its engine is opened once, which takes as long as a house. */
export interface ReviewDesk {
  /**
   * Writes a house's logs, readings and all, reads them as the build does and reviews them. One house at a time.
   *
   * @param month `2026-10`, with the month before it; null: every month
   */
  review(house: SimulatedHouse, month: string | null): Promise<ReviewResult>;
  close(): Promise<void>;
}

/** `readings/K1-2026-q3.csv`: a quarter's readings. */
const QUARTER = /-(\d{4})-q(\d)\.csv$/;

/** Does a quarter begin after the month? Nothing in the month's review, as it stood at its end, looks at such readings. */
function isLater(path: string, month: string): boolean {
  const [, year, quarter] = QUARTER.exec(path) ?? [];
  return quarter !== undefined && `${year}-${String(3 * Number(quarter) - 2).padStart(2, "0")}` > month;
}

/** The house's logs as files in memory. */
function logFiles(house: SimulatedHouse, month: string | null): readonly LogFile[] {
  const written = [...writeLogs(house)].filter(([path]) => month === null || !isLater(path, month));
  return written.map(([path, text]) => ({
    path,
    async *chunks() {
      yield new TextEncoder().encode(text);
    },
  }));
}

/** Nothing of the house before may stand in the engine: some tables are made only where they are missing. */
async function empty(database: LoadableDatabase): Promise<void> {
  const tables = await database.query<{ name: string }>(
    "SELECT table_name AS name FROM duckdb_tables() WHERE NOT internal ORDER BY table_name",
  );
  for (const { name } of tables) await database.query(`DROP TABLE ${quoteName(name)}`);
}

export async function openReviewDesk(): Promise<ReviewDesk> {
  const database = await openNodeDatabase([]);
  return {
    async review(house, month) {
      await empty(database);
      const { published } = await enterLogs(logFiles(house, month), database, { invented: true });
      const logged = await readLoggedRows(database);
      const rows = wholeRows(logged, published);
      const view = { ...wholeView, month };
      return await analyseParts({ logged, published, view, rows, everyMonth: month === null }).review();
    },
    close: () => database.close(),
  };
}
