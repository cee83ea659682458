import { firstPlaceFrom, type KilnReadings, MINUTE, type TimeSpan } from "./kilnReadings.ts";
import type { LoggerHistory } from "./loggerChecks.ts";
import { errorAtReading, loggerErrorAt } from "./loggerCorrection.ts";

/** What the probes over and in the bed read in a part of a hold, °C; null where one is not there, silent or stuck. */
export interface OtherProbes {
  readonly airOffCelsius: number | null;
  readonly bedCelsius: number | null;
}

/** Checks of the two probes themselves; none where they were never checked. */
export interface OtherProbeChecks {
  readonly airOff: LoggerHistory;
  readonly bed: LoggerHistory;
}

/** The green malt is warm by then, and the bed's upper half still wet: it stands at the wet bulb, or near it. */
const WET_FROM = 60 * MINUTE;
const WET_TO = 180 * MINUTE;
/** Long enough that the thermostat's swing hardly shows, short enough that the bed has come near the air. */
const AT_THE_END = 60 * MINUTE;
const FEWEST_READINGS = 10;
const LEAST_COVERED_SHARE = 0.75;

/**
 * When a drying hold's probes are compared: not towards its end, which comes when the air over the bed shows it, so that it would
 * read the same there whatever the thermostat did.
 */
export const dryingProbeSpan = ({ from, to }: TimeSpan): TimeSpan => ({
  from: Math.min(from + WET_FROM, to),
  to: Math.min(from + WET_TO, to),
});

/** The same in a cure: its last hour. */
export const cureProbeSpan = ({ from, to }: TimeSpan): TimeSpan => ({ from: Math.max(from, to - AT_THE_END), to });

/**
 * Means over a part of a hold. A bed stands between the wet bulb of the air that enters it and that air itself, and follows a
 * thermostat that moves; it does not follow a probe at air on that only reads otherwise.
 *
 * @param span null where there is no such hold
 */
export function otherProbes(
  readings: KilnReadings,
  span: TimeSpan | null,
  checks: OtherProbeChecks | null,
): OtherProbes {
  if (span === null) return { airOffCelsius: null, bedCelsius: null };
  return {
    airOffCelsius: meanOf(readings.at, readings.airOffCelsius, span, checks?.airOff ?? null),
    bedCelsius: meanOf(readings.at, readings.bedCelsius, span, checks?.bed ?? null),
  };
}

function meanOf(
  at: Float64Array,
  probe: Float64Array | null,
  span: TimeSpan,
  history: LoggerHistory | null,
): number | null {
  if (probe === null) return null;
  let [sum, count, first, last] = [0, 0, Number.NaN, Number.NaN];
  let isStuck = true;
  let before = Number.NaN;
  for (let i = firstPlaceFrom(at, span.from); i < at.length && (at[i] as number) <= span.to; i += 1) {
    const value = probe[i] as number;
    if (Number.isNaN(value)) continue;
    if (count === 0) first = at[i] as number;
    else if (value !== before) isStuck = false;
    before = value;
    last = at[i] as number;
    sum += value;
    count += 1;
  }
  if (
    count < FEWEST_READINGS ||
    isStuck ||
    span.to - span.from < AT_THE_END / 2 ||
    last - first < LEAST_COVERED_SHARE * (span.to - span.from)
  )
    return null;
  const mean = sum / count;
  const error = history && loggerErrorAt(history, span.to);
  return error === null ? mean : mean - errorAtReading(error, mean);
}
