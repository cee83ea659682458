import type { KilnReadings } from "./kilnReadings.ts";
import type { CheckSession, LoggerHistory } from "./loggerChecks.ts";

/** What the logger's readings are off by at one moment: a straight line over the reading. */
export interface LoggerError {
  /** Error (to be taken off) at a reading of 0 °C, K. */
  readonly atZeroCelsius: number;
  readonly perKelvin: number;
  /** Days to the check it rests on: the farther one between two, else how far it is carried on. */
  readonly ageDays: number;
  readonly basis: "between checks" | "after the last check" | "before the first check";
  readonly sessions: readonly { readonly session: CheckSession; readonly weight: number }[];
}

const DAY = 86_400_000;

/**
 * The logger's error at a moment: linear in time between checks, constant before the first and after the last of an era,
 * with a step where the logger was set or mended.
 *
 * @returns null where no check of this era was made hot: the readings cannot be corrected
 */
export function loggerErrorAt({ sessions, steps }: LoggerHistory, moment: number): LoggerError | null {
  const era = steps.filter((step) => step <= moment).length;
  const usable = sessions.filter((session) => session.correctsHot && session.era === era);
  const before = usable.filter(({ at }) => at <= moment).at(-1);
  const after = usable.find(({ at }) => at > moment);
  const weighted: { session: CheckSession; weight: number }[] = [];
  if (before && after) {
    const share = (moment - before.at) / (after.at - before.at);
    weighted.push({ session: before, weight: 1 - share }, { session: after, weight: share });
  } else {
    const only = before ?? after;
    if (!only) return null;
    weighted.push({ session: only, weight: 1 });
  }
  const sum = (of: (session: CheckSession) => number): number =>
    weighted.reduce((total, { session, weight }) => total + weight * of(session), 0);
  return {
    atZeroCelsius: sum((s) => s.errorKelvin - s.errorPerKelvin * s.aboutCelsius),
    perKelvin: sum((s) => s.errorPerKelvin),
    ageDays: Math.max(...weighted.map(({ session }) => Math.abs(moment - session.at))) / DAY,
    basis: before && after ? "between checks" : before ? "after the last check" : "before the first check",
    sessions: weighted,
  };
}

/** The error at a reading, K. */
export function errorAtReading({ atZeroCelsius, perKelvin }: LoggerError, readingCelsius: number): number {
  return atZeroCelsius + perKelvin * readingCelsius;
}

/** Standard uncertainty at a reading of what one sitting found, K: of its checks and, away from their temperatures, of the slope. */
export function sessionUncertainty(session: CheckSession, readingCelsius: number): number {
  const { errorUncertainty, slopeUncertainty, aboutCelsius } = session;
  return Math.hypot(errorUncertainty, slopeUncertainty * (readingCelsius - aboutCelsius));
}

/**
 * Standard uncertainty of that error, K. Checks are taken to share what is wrong with the reference, so that two of them are no
 * better than one.
 */
export function errorUncertainty({ sessions }: LoggerError, readingCelsius: number): number {
  return sessions.reduce(
    (total, { session, weight }) => total + weight * sessionUncertainty(session, readingCelsius),
    0,
  );
}

export interface CorrectedReadings {
  readonly readings: KilnReadings;
  /** The error at the middle of the load; null where nothing could be corrected and the readings are as logged. */
  readonly error: LoggerError | null;
}

/**
 * Takes the logger's error off the air-on readings of one load. Everything else stays as logged.
 *
 * @param history of the air-on probe of that kiln
 */
export function correctReadings(readings: KilnReadings, history: LoggerHistory): CorrectedReadings {
  const { at, airOnCelsius } = readings;
  const from = at[0];
  const to = at[at.length - 1];
  if (from === undefined || to === undefined) return { readings, error: null };
  const first = loggerErrorAt(history, from);
  const last = loggerErrorAt(history, to);
  const middle = loggerErrorAt(history, (from + to) / 2);
  const turns = [...history.steps, ...history.sessions.map((session) => session.at)];
  // Between two checks the error is a straight line in time; with a check or a step inside the load it is asked each time.
  const straight = !turns.some((turn) => turn > from && turn <= to);
  if (straight && first === null) return { readings, error: null };
  const span = Math.max(1, to - from);
  const airOn = airOnCelsius.map((reading, i) => {
    const time = at[i] as number;
    if (!straight) {
      const error = loggerErrorAt(history, time);
      return error === null ? reading : reading - errorAtReading(error, reading);
    }
    const share = (time - from) / span;
    const error = (e: LoggerError): number => errorAtReading(e, reading);
    return reading - (1 - share) * error(first as LoggerError) - share * error(last as LoggerError);
  });
  return { readings: { ...readings, airOnCelsius: airOn }, error: middle };
}
