import { daysSinceCheck, isCheckStale, type LoggerHistory } from "../../malting/thermostat/loggerChecks.ts";
import { boilingPointAtAltitude } from "../../malting/thermostat/sensorTolerance.ts";
import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { LoggerTrust } from "../thermostatResult.ts";
import type { LoggedCheck } from "./readLoggerChecks.ts";

export interface LoggerQuestion {
  readonly kiln: string;
  readonly loads: readonly ThermostatLoad[];
  readonly checks: readonly LoggedCheck[];
  /** Of the air-on probe's checks, from `loggerHistory`. */
  readonly history: LoggerHistory;
  readonly loggerDays: number;
  readonly altitudeMetres: number;
}

/** An error this many times the uncertainty of its check is the logger's own fault, not chance. */
const CLEARLY_OFF = 3;

/** How far the logger of one kiln can be trusted: a thermostat is never blamed for what its logger did. */
export function loggerTrust(question: LoggerQuestion): LoggerTrust {
  const { kiln, loads, checks, history, loggerDays, altitudeMetres } = question;
  const last = loads.at(-1);
  const days = last === undefined ? null : daysSinceCheck(history, last.loadedAt);
  const corrected = loads.filter((load) => load.dryingLoggerErrorKelvin !== null).at(-1);
  const faults = history.sessions
    .filter(({ errorKelvin, errorUncertainty }) => Math.abs(errorKelvin) > CLEARLY_OFF * errorUncertainty)
    .map(({ at, errorKelvin, aboutCelsius }) => ({ at, errorKelvin, aboutCelsius }));
  return {
    daysSinceCheck: days,
    loggerDays,
    stale: isCheckStale(days, loggerDays),
    errorKelvin: corrected?.dryingLoggerErrorKelvin ?? null,
    uncertaintyKelvin: corrected?.dryingCheckUncertaintyKelvin ?? null,
    checks: checks
      .filter((check) => check.kiln === kiln)
      .map(({ at, probe, referenceCelsius, readingCelsius, note }) => ({
        at,
        probe,
        referenceCelsius,
        readingCelsius,
        note,
      })),
    boilingCelsius: boilingPointAtAltitude(altitudeMetres).celsius,
    faults,
  };
}
