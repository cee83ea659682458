import type { Database } from "../engine/database.ts";
import type { ThermostatLoad } from "../malting/thermostat/thermostatLoad.ts";
import { printIsoDate } from "../units/instant.ts";
import { type AirSources, readAirSources } from "./airCompared.ts";
import type { EventRow } from "./eventRow.ts";
import type { LoadRow } from "./loadRow.ts";
import { once } from "./once.ts";
import type { PublishedLogs } from "./publishedLogs.ts";
import { readEvents } from "./readEvents.ts";
import { readLoads } from "./readLoads.ts";
import { readMoistureSamples } from "./readMoistureSamples.ts";
import { readRuns } from "./readRuns.ts";
import { readTargets } from "./readTargets.ts";
import type { Choices, ReportRows } from "./report.ts";
import { readTrade, type TradeRows } from "./review/promised/readTrade.ts";
import type { RunRow } from "./runRow.ts";
import type { FloorRows } from "./steepGermination/floorRows.ts";
import { readFloor } from "./steepGermination/readFloor.ts";
import type { TargetRow } from "./targetRow.ts";
import { type LoggedCheck, readLoggerChecks } from "./thermostat/readLoggerChecks.ts";
import { readThermostatLoads } from "./thermostat/thermostatTable.ts";
import { readLab } from "./varieties/readLab.ts";
import { type LotRow, readLots } from "./varieties/readLots.ts";
import type { LabRow } from "./varietiesResult.ts";
import { everyRow } from "./whereRows.ts";

/** What the kiln loggers tell of the thermostats: a wide table that one part alone needs. */
export interface ThermostatRows {
  readonly loads: readonly ThermostatLoad[];
  readonly checks: readonly LoggedCheck[];
}

/** What varieties are judged by besides the runs. */
export interface VarietyRows {
  /** By date, then run. */
  readonly lab: readonly LabRow[];
  /** By name. */
  readonly lots: readonly LotRow[];
}

/** All that the engine holds of a house, read out once: a view then only says which of the rows it chooses. */
export interface LoggedRows {
  /** By loading time, latest first. */
  readonly runs: readonly RunRow[];
  /** By loading time, earliest first. */
  readonly loads: readonly LoadRow[];
  readonly events: readonly EventRow[];
  readonly targets: readonly TargetRow[];
  /** Moisture samples by run. */
  readonly samples: ReadonlyMap<string, readonly number[]>;
  /** Read when first asked for. */
  readonly thermostat: () => Promise<ThermostatRows>;
  /** Read when first asked for. */
  readonly varieties: () => Promise<VarietyRows>;
  /** Tanks, beds and counts, read when first asked for. */
  readonly floor: () => Promise<FloorRows>;
  /** The air of every load by where it comes from, read when first asked for. */
  readonly airs: () => Promise<readonly AirSources[]>;
  /** Orders and deliveries, read when first asked for. */
  readonly trade: () => Promise<TradeRows>;
}

/** Reads a joined database (`joinLogs`) out. */
export async function readLoggedRows(database: Database): Promise<LoggedRows> {
  return {
    runs: await readRuns(database, everyRow),
    loads: await readLoads(database, everyRow),
    events: await readEvents(database),
    targets: await readTargets(database),
    samples: await readMoistureSamples(database),
    thermostat: once(async () => ({
      loads: await readThermostatLoads(database, everyRow),
      checks: await readLoggerChecks(database),
    })),
    varieties: once(async () => ({ lab: await readLab(database), lots: await readLots(database) })),
    floor: once(() => readFloor(database)),
    airs: once(() => readAirSources(database)),
    trade: once(() => readTrade(database)),
  };
}

/** The rows of the view that chooses all. */
export function wholeRows(logged: LoggedRows, { house, logs, otherColumns }: PublishedLogs): ReportRows {
  const { runs, loads, events } = logged;
  return {
    house,
    choices: choicesOf(logged, house.timeZone),
    lastLoggedAt: lastLogged(loads, runs),
    runs,
    loads,
    events,
    logs,
    otherColumns,
  };
}

/** What a filter offers: always of all the logs, so that it can be widened again. */
function choicesOf({ runs, loads }: LoggedRows, timeZone: string): Choices {
  const [first, last] = [loads[0], loads.at(-1)];
  return {
    varieties: [...new Set(runs.flatMap(({ variety }) => (variety === null ? [] : [variety])))].sort(),
    kilns: [...new Set(loads.map(({ kiln }) => kiln))].sort(),
    firstDate: first === undefined ? null : printIsoDate(first.loadedAt, timeZone),
    lastDate: last === undefined ? null : printIsoDate(last.loadedAt, timeZone),
  };
}

/** The latest instant that the rows name; null without rows. */
export function lastLogged(loads: readonly LoadRow[], runs: readonly RunRow[]): number | null {
  const moments = [
    ...loads.flatMap((load) => [load.loadedAt, load.unloadedAt]),
    ...runs.flatMap((run) => [run.steepStartedAt, run.germinationEndedAt]),
  ].filter((moment) => moment !== null);
  return moments.length === 0 ? null : moments.reduce((latest, moment) => Math.max(latest, moment));
}
