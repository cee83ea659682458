import { joinLogs } from "../../src/engine/joinLogs.ts";
import { logFolder } from "../../src/engine/logFolder.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { publishedTables } from "../../src/report/publishTables.ts";
import { readEvents } from "../../src/report/readEvents.ts";
import { readingsTaker } from "../../src/report/readingsTaker.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { readFanSets } from "../../src/report/thermostat/readFanSets.ts";
import { readLoggerChecks } from "../../src/report/thermostat/readLoggerChecks.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import { readLogsInParts } from "../../src/tables/readLogsInParts.ts";
import { scanBare } from "./scanBare.ts";
import { timed } from "./timed.ts";

// A process of its own for each, so that the most memory that it held is its own too. Its last line is what it measured.

/** What stood before the readings, and the readings: read, cut by load, summarised and written to the loads' files; s. */
export interface Summarised {
  readonly othersSeconds: number;
  readonly readingsSeconds: number;
  /** Of that, the taking of the parts: cutting by load, summarising, the loads' files. */
  readonly takingSeconds: number;
  readonly rows: number;
  readonly loads: number;
  /** Loads of which an offset in the drying hold or the cure was read. */
  readonly withOffset: number;
  /** Rows of the largest part handed over, and all loads' files together. */
  readonly largestPart: number;
  readonly filesMegabytes: number;
  /** Most memory held before the first reading was read: Node, the other logs and the engine that joined them. */
  readonly peakBeforeMegabytes: number;
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
  const others = await timed(async () => {
    const logs = await readLogsInParts(logFolder(folder));
    const database = await openNodeDatabase(publishedTables(logs.tables));
    await joinLogs(database);
    const loads = await readLoads(database, everyRow);
    const ground = {
      fanSetCelsius: await readFanSets(database),
      checks: await readLoggerChecks(database),
      events: await readEvents(database),
      timeZone: logs.house.timeZone,
    };
    await database.close();
    return { logs, taker: readingsTaker(loads, ground) };
  });
  const { logs, taker } = others.result;
  const peakBeforeMegabytes = peakMegabytes();
  let [rows, largestPart, taking] = [0, 0, 0];
  const read = await timed(() =>
    logs.readReadings((part) => {
      const from = performance.now();
      taker.take(part);
      taking += performance.now() - from;
      rows += part.rowCount;
      largestPart = Math.max(largestPart, part.rowCount);
    }),
  );
  const { loads, summaries } = taker.taken();
  return {
    othersSeconds: others.milliseconds / 1000,
    readingsSeconds: read.milliseconds / 1000,
    takingSeconds: taking / 1000,
    rows,
    loads: loads.length,
    withOffset: summaries.filter((load) => load.dryingOffsetKelvin !== null || load.cureOffsetKelvin !== null).length,
    largestPart,
    filesMegabytes: loads.reduce((sum, { csv }) => sum + csv.byteLength, 0) / 1e6,
    peakBeforeMegabytes,
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
