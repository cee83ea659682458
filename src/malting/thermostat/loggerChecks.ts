/** One line of logger-checks.csv: a probe held against a reference. */
export interface LoggerCheck {
  readonly kiln: string;
  /** Milliseconds UTC. */
  readonly at: number;
  readonly probe: "air_on" | "air_off" | "bed";
  readonly referenceCelsius: number;
  readonly readingCelsius: number;
}

/** Checks made in one sitting: a straight line of the logger's error over temperature. */
export interface CheckSession {
  /** The middle of the sitting, milliseconds UTC. */
  readonly at: number;
  /** Error (reading less reference), K, at the mean temperature of the sitting. */
  readonly errorKelvin: number;
  readonly aboutCelsius: number;
  /** Change of the error with the reading; 0 where one temperature was checked. */
  readonly errorPerKelvin: number;
  /** Standard uncertainties of the two. */
  readonly errorUncertainty: number;
  readonly slopeUncertainty: number;
  /** False for an ice point alone: it shows that something is off, but says nothing of readings 50 to 80 K above it. */
  readonly correctsHot: boolean;
  /** Counted from 0, one more after each step. */
  readonly era: number;
}

/** The checks of one probe in time order, and when the logger was set, mended or changed. */
export interface LoggerHistory {
  readonly sessions: readonly CheckSession[];
  /** Moments at which its error may have jumped, milliseconds UTC. */
  readonly steps: readonly number[];
}

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const ONE_SITTING = 12 * HOUR;
/** References nearer than this are one temperature. */
const SAME_TEMPERATURE_KELVIN = 5;
/** Colder than this is an ice point or the like. */
const HOT_CELSIUS = 30;

/**
 * Standard uncertainty of a single check, K: an ice point, boiling water or a water bath with a better thermometer in it, read
 * by hand, and the logger's own last digit. Common practice, no source.
 */
export const CHECK_UNCERTAINTY_KELVIN = 0.15;
/** How much the error may change for each kelvin away from a lone hot check. Common practice, no source. */
const UNSEEN_SLOPE = 0.005;

/**
 * Sorts the checks of one probe into sittings and eras.
 *
 * A logged event of the logger begins a new era. On its day, checks that go through the same temperatures a second time are
 * *as found* and *as left*, and the step lies between them. One sitting alone on that day counts as found, and for both
 * eras where it found nothing to put right.
 *
 * @param eventDays the first moments of the local days on which an event of scope logger is logged, milliseconds UTC
 */
export function loggerHistory(
  checks: readonly LoggerCheck[],
  kiln: string,
  probe: LoggerCheck["probe"],
  eventDays: readonly number[],
  checkUncertaintyKelvin = CHECK_UNCERTAINTY_KELVIN,
): LoggerHistory {
  const own = checks.filter((check) => check.kiln === kiln && check.probe === probe).sort((a, b) => a.at - b.at);
  const days = [...new Set(eventDays)].sort((a, b) => a - b);
  const dayOf = (at: number): number | undefined => days.find((day) => at >= day && at < day + DAY);
  const sittings: LoggerCheck[][] = [];
  for (const check of own) {
    const last = sittings.at(-1);
    const goesOn = last !== undefined && check.at - (last.at(-1) as LoggerCheck).at <= ONE_SITTING;
    if (goesOn && !(dayOf(check.at) !== undefined && isRepeat(last, check))) last.push(check);
    else sittings.push([check]);
  }
  const steps = days.map((day) =>
    stepOn(
      day,
      sittings.filter((s) => dayOf((s[0] as LoggerCheck).at) === day),
    ),
  );
  const sessions = sittings.flatMap((sitting) => {
    const session = sessionOf(sitting, checkUncertaintyKelvin);
    const era = steps.filter((step) => step <= session.at).length;
    const day = dayOf(session.at);
    const alone = day !== undefined && sittings.filter((s) => dayOf((s[0] as LoggerCheck).at) === day).length === 1;
    const foundRight = sitting.every(
      (c) => Math.abs(c.readingCelsius - c.referenceCelsius) <= 2 * checkUncertaintyKelvin,
    );
    const found: CheckSession = { ...session, era };
    return alone && foundRight ? [found, { ...found, era: era + 1 }] : [found];
  });
  return { sessions, steps };
}

const isRepeat = (sitting: readonly LoggerCheck[], check: LoggerCheck): boolean =>
  sitting.some((other) => Math.abs(other.referenceCelsius - check.referenceCelsius) < SAME_TEMPERATURE_KELVIN);

/** Between the first sitting of that day and the next; after a lone one; at noon where nothing was checked. */
function stepOn(day: number, sittings: readonly (readonly LoggerCheck[])[]): number {
  const [found, left] = sittings;
  if (found === undefined) return day + DAY / 2;
  const end = (found.at(-1) as LoggerCheck).at;
  return left === undefined ? end + 1 : (end + (left[0] as LoggerCheck).at) / 2;
}

function sessionOf(sitting: readonly LoggerCheck[], uncertainty: number): Omit<CheckSession, "era"> {
  const n = sitting.length;
  const mean = (of: (check: LoggerCheck) => number): number => sitting.reduce((sum, c) => sum + of(c), 0) / n;
  const error = (c: LoggerCheck): number => c.readingCelsius - c.referenceCelsius;
  const aboutCelsius = mean((c) => c.readingCelsius);
  const errorKelvin = mean(error);
  const readings = sitting.map((c) => c.readingCelsius);
  const spread = sitting.reduce((sum, c) => sum + (c.readingCelsius - aboutCelsius) ** 2, 0);
  const sloped = Math.max(...readings) - Math.min(...readings) >= SAME_TEMPERATURE_KELVIN;
  const products = sitting.reduce((sum, c) => sum + (c.readingCelsius - aboutCelsius) * error(c), 0);
  return {
    at: mean((c) => c.at),
    errorKelvin,
    aboutCelsius,
    errorPerKelvin: sloped ? products / spread : 0,
    errorUncertainty: uncertainty / Math.sqrt(n),
    slopeUncertainty: sloped ? uncertainty / Math.sqrt(spread) : UNSEEN_SLOPE,
    correctsHot: Math.max(...readings) >= HOT_CELSIUS,
  };
}

/** Days from the last check of this probe before `moment` to it; null where there was none. An ice point counts. */
export function daysSinceCheck({ sessions }: LoggerHistory, moment: number): number | null {
  const before = sessions.filter(({ at }) => at <= moment);
  return before.length === 0 ? null : (moment - Math.max(...before.map(({ at }) => at))) / DAY;
}

/** Whether the last check is older than the house allows (`[checks] logger_days`), or there was none. */
export function isCheckStale(days: number | null, loggerDays: number): boolean {
  return days === null || days > loggerDays;
}
