import { joinLogs } from "../../src/engine/joinLogs.ts";
import { logFolder } from "../../src/engine/logFolder.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { publishedTables } from "../../src/report/publishTables.ts";
import { readEvents } from "../../src/report/readEvents.ts";
import { readingsByLoad } from "../../src/report/readingsByLoad.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { readFanSets } from "../../src/report/thermostat/readFanSets.ts";
import { readLoggerChecks } from "../../src/report/thermostat/readLoggerChecks.ts";
import { summariseLoads } from "../../src/report/thermostat/summariseLoads.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import { scanBare } from "./scanBare.ts";
import { timed } from "./timed.ts";

// A process of its own for each, so that the most memory that it held is its own too. Its last line is what it measured.

/** Reading the logs, cutting the readings by load, and summarising each load; s. */
export interface Summarised {
  readonly readSeconds: number;
  readonly byLoadSeconds: number;
  readonly summariseSeconds: number;
  readonly rows: number;
  readonly loads: number;
  /** Loads of which an offset in the drying hold or the cure was read. */
  readonly withOffset: number;
  readonly peakMegabytes: number;
}

/** DuckDB alone over the files of readings. */
export interface Scanned {
  readonly scanSeconds: number;
  readonly rows: number;
  readonly peakMegabytes: number;
}

const peakMegabytes = (): number => (process.resourceUsage().maxRSS * 1024) / 1e6;

async function summarise(folder: string): Promise<Summarised> {
  const read = await timed(() => readLogs(logFolder(folder)));
  const { tables, house } = read.result;
  const readings = tables.get("readings");
  if (readings === undefined) throw new Error("the logs hold no readings");
  const database = await openNodeDatabase(publishedTables(tables));
  await joinLogs(database);
  const loads = await readLoads(database, everyRow);
  const events = await readEvents(database);
  const checks = await readLoggerChecks(database);
  const fanSets = await readFanSets(database);
  await database.close();
  const cut = await timed(() => readingsByLoad(readings, loads));
  const summed = await timed(() => summariseLoads(loads, cut.result, fanSets, checks, events, house.timeZone));
  return {
    readSeconds: read.milliseconds / 1000,
    byLoadSeconds: cut.milliseconds / 1000,
    summariseSeconds: summed.milliseconds / 1000,
    rows: readings.rowCount,
    loads: summed.result.length,
    withOffset: summed.result.filter((load) => load.dryingOffsetKelvin !== null || load.cureOffsetKelvin !== null)
      .length,
    peakMegabytes: peakMegabytes(),
  };
}

async function scan(folder: string): Promise<Scanned> {
  const files = logFolder(folder).flatMap(({ path }) => (path.startsWith("readings/") ? [path] : []));
  const { milliseconds, rows } = await scanBare(folder, files);
  return { scanSeconds: milliseconds / 1000, rows, peakMegabytes: peakMegabytes() };
}

const [what, folder] = process.argv.slice(2);
if (folder === undefined || (what !== "summarise" && what !== "scan")) {
  throw new RangeError(`thermostatChild takes summarise or scan and a folder; got ${what} and ${folder}`);
}
console.log(JSON.stringify(await (what === "summarise" ? summarise : scan)(folder)));
