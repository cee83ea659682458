import { basename } from "node:path";
import { joinLogs } from "../engine/joinLogs.ts";
import { logFolder } from "../engine/logFolder.ts";
import { openNodeDatabase } from "../engine/node.ts";
import { readLogsInParts } from "../tables/readLogsInParts.ts";
import { buildReport } from "./buildReport.ts";
import { contentDigest } from "./contentDigest.ts";
import { type LoadCurve, parseLoadReadings } from "./loadCurve.ts";
import { logsCoverage } from "./logsCoverage.ts";
import { otherColumns } from "./otherColumns.ts";
import type { PublishedLogs } from "./publishedLogs.ts";
import { loadReadingsTable } from "./publishReadings.ts";
import { publishedTables } from "./publishTables.ts";
import { readEvents } from "./readEvents.ts";
import { readingsTaker } from "./readingsTaker.ts";
import { readLoads } from "./readLoads.ts";
import { readRuns } from "./readRuns.ts";
import type { Report } from "./report.ts";
import { reportFiles } from "./reportFiles.ts";
import { runPage } from "./runPage.ts";
import type { KilnCurve, RunPageResult } from "./runPageResult.ts";
import { readFanSets } from "./thermostat/readFanSets.ts";
import { readLoggerChecks } from "./thermostat/readLoggerChecks.ts";
import { thermostatTable } from "./thermostat/thermostatTable.ts";
import { wholeView } from "./view.ts";
import { everyRow } from "./whereRows.ts";

/** All that the pages are made from, and the files that go out beside them. */
export interface BuiltReport {
  readonly report: Report;
  /** The readings of a load as its own file has them; null without readings. */
  readonly curveOf: (load: string) => LoadCurve | null;
  /** By name inside the tables' folder. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** Name of the file that the engine starts from, and the digest in the names of the report's own files. */
  readonly publishedFile: string;
  readonly reportDigest: string;
}

/** The invented house's folder; every page made from it says that it is invented. */
const INVENTED = "demo";

/**
 * Reads a folder of logs and makes the report of all of it. The tables that go out are the very bytes that the engine was
 * given here, so that a browser that loads them gets the same numbers.
 *
 * @throws {Error} when the folder cannot be read
 */
export async function reportFromFolder(folder: string): Promise<BuiltReport> {
  const { house, tables, readReadings } = await readLogsInParts(logFolder(folder));
  const logTables = publishedTables(tables);
  const database = await openNodeDatabase(logTables);
  try {
    await joinLogs(database);
    const loads = await readLoads(database, everyRow);
    const events = await readEvents(database);
    const taker = readingsTaker(loads, {
      fanSetCelsius: await readFanSets(database),
      checks: await readLoggerChecks(database),
      events,
      timeZone: house.timeZone,
    });
    const { problems, files: filesRead } = await readReadings(taker.take);
    const readings = taker.taken();
    const loadReadings = loadReadingsTable(readings.loads);
    const thermostats = thermostatTable(readings.summaries);
    await database.load([loadReadings, thermostats]);

    const encoder = new TextEncoder();
    const files = new Map(readings.loads.map(({ file, csv }) => [file, csv]));
    const outgoing = [...logTables, loadReadings, thermostats].map(({ name, columns, csv }) => {
      const file = `${name}.${contentDigest(csv)}.csv`;
      files.set(file, csv);
      return { name, columns, file, bytes: csv.byteLength };
    });
    const published: PublishedLogs = {
      house: {
        name: house.name,
        timeZone: house.timeZone,
        units: house.units,
        altitudeMetres: house.altitudeMetres,
        invented: basename(folder) === INVENTED,
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
      otherColumns: otherColumns(tables),
      tables: outgoing,
    };
    const report = await buildReport(database, published, wholeView);
    const list = encoder.encode(JSON.stringify(published));
    const publishedFile = `published.${contentDigest(list)}.json`;
    files.set(publishedFile, list);
    const pieces = reportFiles(report);
    for (const [file, bytes] of pieces.files) files.set(file, bytes);
    const fileOf = new Map(readings.loads.map(({ load, csv }) => [load, csv]));
    const curveOf = (load: string): LoadCurve | null => {
      const csv = fileOf.get(load);
      return csv === undefined ? null : parseLoadReadings(new TextDecoder().decode(csv));
    };
    return { report, curveOf, files, publishedFile, reportDigest: pieces.digest };
  } finally {
    await database.close();
  }
}

let built: Promise<BuiltReport> | null = null;

/** The report of the folder that the build was started with, made once however many pages ask for it. */
export function getBuilt(): Promise<BuiltReport> {
  built ??= reportFromFolder(process.env.PIECEBOOK_LOGS ?? "data/demo");
  return built;
}

export const getReport = async (): Promise<Report> => (await getBuilt()).report;

/** @throws {RangeError} when the logs hold no such run */
export async function getRunPage(run: string): Promise<RunPageResult> {
  const { report, curveOf } = await getBuilt();
  const row = report.runs.find((candidate) => candidate.run === run);
  if (row === undefined) throw new RangeError(`the logs hold no run ${run}`);
  const curves = new Map<string, KilnCurve>();
  for (const { load, runs } of report.loads) {
    const curve = runs.includes(run) ? curveOf(load) : null;
    if (curve !== null) curves.set(load, curve);
  }
  return runPage(report, row, curves);
}
