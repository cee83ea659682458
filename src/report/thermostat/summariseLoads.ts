import { type LoggerCheck, type LoggerHistory, loggerHistory } from "../../malting/thermostat/loggerChecks.ts";
import { summariseLoad } from "../../malting/thermostat/summariseLoad.ts";
import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import { startOfLocalDay } from "../../units/instant.ts";
import type { EventRow } from "../eventRow.ts";
import type { LoadCurve } from "../loadCurve.ts";
import type { LoadRow } from "../loadRow.ts";

const isoDate = (utcMidnight: number): string => new Date(utcMidnight).toISOString().slice(0, 10);

/** The first moments of the local days on which something of the logger is logged. */
export function loggerEventDays(events: readonly EventRow[], timeZone: string): readonly number[] {
  return events.filter(({ scope }) => scope === "logger").map(({ on }) => startOfLocalDay(isoDate(on), timeZone));
}

/** What is known of a house besides its readings and loads. */
export interface SummaryGround {
  readonly fanSetCelsius: ReadonlyMap<string, number>;
  readonly checks: readonly LoggerCheck[];
  readonly events: readonly EventRow[];
  readonly timeZone: string;
}

/** Says what the thermostats did in one load: worked out once at build, a load at a time. */
export function loadSummariser({
  fanSetCelsius,
  checks,
  events,
  timeZone,
}: SummaryGround): (load: LoadRow, curve: LoadCurve) => ThermostatLoad {
  const days = loggerEventDays(events, timeZone);
  const histories = new Map<string, LoggerHistory>();
  const historyOf = (kiln: string, probe: LoggerCheck["probe"]): LoggerHistory => {
    const key = JSON.stringify([kiln, probe]);
    const history = histories.get(key) ?? loggerHistory(checks, kiln, probe, days);
    histories.set(key, history);
    return history;
  };
  return (load, curve) => {
    const logged = { ...load, fanSetCelsius: fanSetCelsius.get(load.load) ?? null };
    const others = { airOff: historyOf(load.kiln, "air_off"), bed: historyOf(load.kiln, "bed") };
    return summariseLoad(curve, logged, historyOf(load.kiln, "air_on"), others);
  };
}
