import type { Database } from "../engine/database.ts";
import { pressureAtAltitude } from "../malting/moistAir.ts";
import { printIsoDate } from "../units/instant.ts";
import { analyseKilnHours } from "./kilnHours/analyseKilnHours.ts";
import type { LoadRow } from "./loadRow.ts";
import type { PublishedLogs } from "./publishedLogs.ts";
import { readEvents } from "./readEvents.ts";
import { readLoads } from "./readLoads.ts";
import { readMoistureSamples } from "./readMoistureSamples.ts";
import { readRuns } from "./readRuns.ts";
import { readTargets } from "./readTargets.ts";
import type { Choices, Report } from "./report.ts";
import { rowFilter } from "./rowFilter.ts";
import type { RunRow } from "./runRow.ts";
import { targetMoisture } from "./targetMoisture.ts";
import { analyseThermostat } from "./thermostat/analyseThermostat.ts";
import { readLoggerChecks } from "./thermostat/readLoggerChecks.ts";
import { readThermostatLoads } from "./thermostat/thermostatTable.ts";
import type { View } from "./view.ts";
import { analyseYieldMoisture } from "./yieldMoisture/analyseYieldMoisture.ts";

/**
 * Everything the pages say for one view of the logs. The same in Node while the site is built and in the browser's
 * worker; `database` holds the published tables.
 */
export async function buildReport(database: Database, published: PublishedLogs, view: View): Promise<Report> {
  const { house, logs, otherColumns } = published;
  const filter = rowFilter(view, house.timeZone);
  const runs = await readRuns(database, filter);
  const loads = await readLoads(database, filter);
  const events = await readEvents(database);
  const targets = await readTargets(database);
  const without = new Set(view.without);
  const kilnHours = analyseKilnHours(loads, {
    air: view.air,
    without,
    targetMoisturePercent: targetMoisture(targets),
    pressurePascals: pressureAtAltitude(house.altitudeMetres),
    timeZone: house.timeZone,
  });
  const yieldMoisture = analyseYieldMoisture(runs, loads, {
    samples: await readMoistureSamples(database),
    targets,
    events,
    baselines: published.baselines,
    rules: view.rules,
    without,
    timeZone: house.timeZone,
  });
  return {
    house,
    choices: await readChoices(database, house.timeZone),
    lastLoggedAt: lastLogged(loads, runs),
    runs,
    loads,
    events,
    kilnHours,
    yieldMoisture,
    thermostat: analyseThermostat(await readThermostatLoads(database, filter), {
      settings: published.thermostat,
      checks: await readLoggerChecks(database),
      events,
      loads,
      kilnHours,
      moisture: yieldMoisture.charts.find(({ measure }) => measure === "final_moisture_pct"),
      altitudeMetres: house.altitudeMetres,
      timeZone: house.timeZone,
    }),
    logs,
    otherColumns,
  };
}

function lastLogged(loads: readonly LoadRow[], runs: readonly RunRow[]): number | null {
  const moments = [
    ...loads.flatMap((load) => [load.loadedAt, load.unloadedAt]),
    ...runs.flatMap((run) => [run.steepStartedAt, run.germinationEndedAt]),
  ].filter((moment) => moment !== null);
  return moments.length === 0 ? null : moments.reduce((latest, moment) => Math.max(latest, moment));
}

/** From all of the logs, whatever the view, so that a filter can be widened again. */
async function readChoices(database: Database, timeZone: string): Promise<Choices> {
  const varieties = await database.query<{ variety: string }>(
    "SELECT DISTINCT variety FROM run_rows WHERE variety IS NOT NULL ORDER BY variety",
  );
  const kilns = await database.query<{ kiln: string }>("SELECT DISTINCT kiln FROM load_rows ORDER BY kiln");
  const [span] = await database.query<{ first: number | null; last: number | null }>(
    "SELECT min(loaded_at) AS first, max(loaded_at) AS last FROM load_rows",
  );
  const date = (instant: number | null | undefined): string | null =>
    instant == null ? null : printIsoDate(instant, timeZone);
  return {
    varieties: varieties.map((row) => row.variety),
    kilns: kilns.map((row) => row.kiln),
    firstDate: date(span?.first),
    lastDate: date(span?.last),
  };
}
