import { openNodeDatabase } from "../../src/engine/node.ts";
import { analyseParts } from "../../src/report/analyseParts.ts";
import { enterLogs } from "../../src/report/enterLogs.ts";
import { readLoggedRows, wholeRows } from "../../src/report/loggedRows.ts";
import type { ReviewResult } from "../../src/report/reviewResult.ts";
import { wholeView } from "../../src/report/view.ts";
import type { LogFile } from "../../src/tables/logFile.ts";
import type { SimulatedHouse } from "../demo/simulateHouse.ts";
import { writeLogs } from "../demo/writeLogs.ts";

/** The house's logs as files in memory. */
function logFiles(house: SimulatedHouse): readonly LogFile[] {
  return [...writeLogs(house)].map(([path, text]) => ({
    path,
    async *chunks() {
      yield new TextEncoder().encode(text);
    },
  }));
}

/**
 * Writes a house's logs, readings and all, reads them as the build does and reviews them.
 *
 * @param month `2026-10`, with the month before it; null: every month
 */
export async function reviewHouse(house: SimulatedHouse, month: string | null): Promise<ReviewResult> {
  const database = await openNodeDatabase([]);
  try {
    const { published } = await enterLogs(logFiles(house), database, { invented: true });
    const logged = await readLoggedRows(database);
    const rows = wholeRows(logged, published);
    const view = { ...wholeView, month };
    return await analyseParts({ logged, published, view, rows, everyMonth: month === null }).review();
  } finally {
    await database.close();
  }
}
