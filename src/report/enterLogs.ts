import type { LoadableDatabase } from "../engine/database.ts";
import { joinLogs } from "../engine/joinLogs.ts";
import type { LogFile } from "../tables/logFile.ts";
import type { ReadOptions } from "../tables/readLogs.ts";
import { readLogsInParts } from "../tables/readLogsInParts.ts";
import { contentDigest } from "./contentDigest.ts";
import { logsCoverage } from "./logsCoverage.ts";
import { otherColumns } from "./otherColumns.ts";
import type { PublishedLogs } from "./publishedLogs.ts";
import { loadReadingsTable } from "./publishReadings.ts";
import { publishedTables } from "./publishTables.ts";
import { readEvents } from "./readEvents.ts";
import { readingsTaker } from "./readingsTaker.ts";
import { readLoads } from "./readLoads.ts";
import { readRuns } from "./readRuns.ts";
import { readFanSets } from "./thermostat/readFanSets.ts";
import { readLoggerChecks } from "./thermostat/readLoggerChecks.ts";
import { thermostatTable } from "./thermostat/thermostatTable.ts";
import { everyRow } from "./whereRows.ts";

/** Logs that have been read, checked and put into the engine. */
export interface EnteredLogs {
  readonly published: PublishedLogs;
  /** The tables as the engine was given them, by the names under which `published` lists them. */
  readonly tables: ReadonlyMap<string, Uint8Array>;
  /** Each load's readings, by the name that its row has as `readingsFile`. */
  readonly readings: ReadonlyMap<string, Uint8Array>;
}

/** Work between the bytes that may take seconds, told before it begins: the rows of readings put in order are counted. */
export type EnteringStep =
  | { readonly name: "joining" }
  | { readonly name: "gathering" }
  | { readonly name: "ordering"; readonly rows: number; readonly of: number };

interface EnterOptions extends ReadOptions {
  /** True of the invented house alone. */
  readonly invented: boolean;
  /** Hears how many loads' readings have been summed up, of all loads. */
  readonly onLoad?: (summed: number, total: number) => void;
  readonly onStep?: (step: EnteringStep) => void;
}

/**
 * Reads a house's logs and puts them into `database`, which is empty before and joined after: all that comes between bytes and
 * report, the same while the site is built and where a reader brings logs of their own.
 *
 * @param files as for `readLogsInParts`: those of readings are read twice
 */
export async function enterLogs(
  files: AsyncIterable<LogFile> | Iterable<LogFile>,
  database: LoadableDatabase,
  options: EnterOptions,
): Promise<EnteredLogs> {
  const { onStep = () => {} } = options;
  const { house, tables, readReadings } = await readLogsInParts(files, {
    ...options,
    onOrdered: (rows, of) => onStep({ name: "ordering", rows, of }),
  });
  onStep({ name: "joining" });
  const logTables = publishedTables(tables);
  await database.load(logTables);
  await joinLogs(database);
  const loads = await readLoads(database, everyRow);
  const ground = {
    fanSetCelsius: await readFanSets(database),
    checks: await readLoggerChecks(database),
    events: await readEvents(database),
    timeZone: house.timeZone,
  };
  const taker = readingsTaker(loads, ground, options.onLoad);
  const { problems, files: filesRead } = await readReadings(taker.take);
  onStep({ name: "gathering" });
  const readings = taker.taken();
  const loadReadings = loadReadingsTable(readings.loads);
  const thermostats = thermostatTable(readings.summaries);
  await database.load([loadReadings, thermostats]);

  const bytesOf = new Map<string, Uint8Array>();
  const outgoing = [...logTables, loadReadings, thermostats].map(({ name, columns, csv }) => {
    const file = `${name}.${contentDigest(csv)}.csv`;
    bytesOf.set(file, csv);
    return { name, columns, file, bytes: csv.byteLength };
  });
  const published: PublishedLogs = {
    house: {
      name: house.name,
      timeZone: house.timeZone,
      units: house.units,
      altitudeMetres: house.altitudeMetres,
      invented: options.invented,
    },
    logs: {
      files: filesRead,
      problems,
      months: logsCoverage(
        tables,
        await readRuns(database, everyRow),
        await readLoads(database, everyRow),
        house.timeZone,
        readings.byMonth,
      ),
    },
    costs: house.costs,
    baselines: house.baselines,
    tolerances: house.tolerances.measures,
    thermostat: {
      toleranceKelvin: house.tolerances.thermostatCelsius,
      loggerDays: house.checks.loggerDays,
      probeAtBulb: house.kilns.filter((kiln) => kiln.probeAtBulb).map((kiln) => kiln.id),
    },
    kilns: house.kilns,
    otherColumns: otherColumns(tables),
    tables: outgoing,
  };
  return {
    published,
    tables: bytesOf,
    readings: new Map(readings.loads.map(({ file, csv }) => [file, csv])),
  };
}
