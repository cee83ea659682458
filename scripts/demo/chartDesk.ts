import { joinLogs } from "../../src/engine/joinLogs.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import type { YieldMoistureResult } from "../../src/report/controlChartResult.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";
import { publishedTables } from "../../src/report/publishTables.ts";
import { readEvents } from "../../src/report/readEvents.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { readMoistureSamples } from "../../src/report/readMoistureSamples.ts";
import { readRuns } from "../../src/report/readRuns.ts";
import { readTargets } from "../../src/report/readTargets.ts";
import type { RunRow } from "../../src/report/runRow.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import {
  analyseYieldMoisture,
  type YieldMoistureOptions,
} from "../../src/report/yieldMoisture/analyseYieldMoisture.ts";
import type { LogFile } from "../../src/tables/logFile.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import type { SimulatedHouse } from "./simulateHouse.ts";
import { writeLogs } from "./writeLogs.ts";

/** What a house's logs hold for the charts of yield and moisture. */
export interface ChartInput {
  readonly runs: readonly RunRow[];
  readonly loads: readonly LoadRow[];
  readonly options: YieldMoistureOptions;
}

/** Where simulated houses are charted one after another: one engine, since starting one takes most of a second. */
export interface ChartDesk {
  /** Writes the house's logs, reads them as the build does and joins them. */
  read(house: SimulatedHouse): Promise<ChartInput>;
  close(): Promise<void>;
}

export async function openChartDesk(): Promise<ChartDesk> {
  const database = await openNodeDatabase([]);
  return {
    async read(house) {
      const { house: settings, tables } = await readLogs(logFiles(house));
      await database.load(publishedTables(tables));
      await joinLogs(database);
      return {
        runs: await readRuns(database, everyRow),
        loads: await readLoads(database, everyRow),
        options: {
          samples: await readMoistureSamples(database),
          targets: await readTargets(database),
          events: await readEvents(database),
          baselines: settings.baselines,
          rules: null,
          without: new Set(),
          timeZone: settings.timeZone,
        },
      };
    },
    close: () => database.close(),
  };
}

/** The files in memory, but for weather and readings, which no chart of yield or moisture looks at. */
function logFiles(house: SimulatedHouse): readonly LogFile[] {
  return [...writeLogs(house)]
    .filter(([path]) => !path.includes("/"))
    .map(([path, text]) => ({
      path,
      async *chunks() {
        yield new TextEncoder().encode(text);
      },
    }));
}

/** The charts of a house as its page shows them, or of all its batches but some. */
export function chartsOf(
  { runs, loads, options }: ChartInput,
  taken: { readonly out?: ReadonlySet<string>; readonly baselines?: YieldMoistureOptions["baselines"] } = {},
): YieldMoistureResult {
  const { out, baselines = options.baselines } = taken;
  const rows = out === undefined ? runs : runs.filter(({ run }) => !out.has(run));
  return analyseYieldMoisture(rows, loads, { ...options, baselines });
}
