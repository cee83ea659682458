import { pressureAtAltitude } from "../../malting/moistAir.ts";
import { CHECK_UNCERTAINTY_KELVIN, type LoggerHistory, loggerHistory } from "../../malting/thermostat/loggerChecks.ts";
import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { ControlChart } from "../controlChartResult.ts";
import type { EventRow } from "../eventRow.ts";
import type { KilnHoursResult } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";
import type {
  DriftEffect,
  HoldJudgement,
  HoldName,
  KilnThermostat,
  ThermostatResult,
  ThermostatStretch,
} from "../thermostatResult.ts";
import { checkErrors } from "./checkErrors.ts";
import { driftEffects } from "./driftEffects.ts";
import { driftEvidence } from "./driftEvidence.ts";
import { type JudgedStretch, judgeStretch, type ToleranceTerms } from "./judgeStretch.ts";
import { loggerTrust } from "./loggerTrust.ts";
import { offsetPoints } from "./offsetPoints.ts";
import { probeEvidence } from "./probeEvidence.ts";
import type { LoggedCheck } from "./readLoggerChecks.ts";
import { type StretchStart, stretchAt, stretchStarts } from "./stretches.ts";
import { loggerEventDays } from "./summariseLoads.ts";
import { atUsualDuty } from "./usualDuty.ts";

/** What house.toml says of thermostats and loggers; it goes out with the tables. */
export interface ThermostatSettings {
  readonly toleranceKelvin: number;
  readonly loggerDays: number;
  readonly probeAtBulb: readonly string[];
}

export interface ThermostatOptions {
  readonly settings: ThermostatSettings;
  readonly checks: readonly LoggedCheck[];
  readonly events: readonly EventRow[];
  readonly loads: readonly LoadRow[];
  readonly kilnHours: KilnHoursResult;
  readonly moisture: ControlChart | undefined;
  readonly altitudeMetres: number;
  readonly timeZone: string;
  /** Leave the stretches that have ended unjudged: a month's review looks at the latest alone. */
  readonly latestStretchOnly?: boolean;
}

/** Stands for a stretch that nobody asked about. */
const UNJUDGED: JudgedStretch = { alarm: null, models: null, tooLittle: "This stretch was not judged." };

/** What the thermostats of each kiln really do, whether that changes, and whether the logger may be the one that is off. */
export function analyseThermostat(summaries: readonly ThermostatLoad[], options: ThermostatOptions): ThermostatResult {
  const kilns = [...new Set(options.loads.map(({ kiln }) => kiln))].sort();
  return { kilns: kilns.map((kiln) => kilnThermostat(kiln, summaries, options)) };
}

function kilnThermostat(
  kiln: string,
  summaries: readonly ThermostatLoad[],
  options: ThermostatOptions,
): KilnThermostat {
  const { settings, checks, events, altitudeMetres, timeZone } = options;
  const loads = summaries.filter((load) => load.kiln === kiln);
  const rows = new Map(options.loads.map((row) => [row.load, row]));
  const runsOf = (load: string): readonly string[] => rows.get(load)?.runs ?? [];
  const history = loggerHistory(checks, kiln, "air_on", loggerEventDays(events, timeZone));
  const logger = loggerTrust({
    kiln,
    loads,
    checks,
    history,
    loggerDays: settings.loggerDays,
    altitudeMetres,
  });
  const probeAtBulb = settings.probeAtBulb.includes(kiln);
  const terms: ToleranceTerms = {
    toleranceKelvin: settings.toleranceKelvin,
    probeAtBulb,
    checkUncertaintyKelvin: logger.uncertaintyKelvin ?? CHECK_UNCERTAINTY_KELVIN,
  };
  const starts = stretchStarts(events, timeZone);
  const judged = (hold: HoldName): HoldJudgement | null =>
    judgeHold(
      hold,
      loads,
      starts,
      { ...terms, latestStretchOnly: options.latestStretchOnly ?? false },
      runsOf,
      rows,
      history,
      pressureAtAltitude(altitudeMetres),
    );
  const drying = judged("drying");
  const cure = judged("cure");
  return {
    kiln,
    loads,
    drying,
    cure,
    fan: loads
      .filter(({ fanOffsetKelvin, fanSwitchOnCelsius }) => fanOffsetKelvin !== null || fanSwitchOnCelsius !== null)
      .map((load) => ({
        load: load.load,
        runs: runsOf(load.load),
        at: load.loadedAt,
        setCelsius: fanSet(load),
        offsetKelvin: load.fanOffsetKelvin,
        shareOfHold: load.fanShareOfHold,
      })),
    probeAtBulb,
    toleranceKelvin: settings.toleranceKelvin,
    logger,
    effects: effectsOf(kiln, drying, starts, options),
    events: events.filter(({ scope }) => scope === "thermostat" || scope === "logger" || scope === "kiln"),
    latestLoad: loads.at(-1)?.load ?? null,
    tooLittle: loads.length === 0 ? `No readings of kiln ${kiln} are logged, so its thermostat cannot be read.` : null,
  };
}

/** The fan's own set point: the middle of its switch points less what it is off by. */
function fanSet({ fanSwitchOnCelsius, fanSwitchOffCelsius, fanOffsetKelvin }: ThermostatLoad): number | null {
  if (fanSwitchOnCelsius === null || fanSwitchOffCelsius === null || fanOffsetKelvin === null) return null;
  return (fanSwitchOnCelsius + fanSwitchOffCelsius) / 2 - fanOffsetKelvin;
}

function judgeHold(
  hold: HoldName,
  loads: readonly ThermostatLoad[],
  starts: readonly StretchStart[],
  terms: ToleranceTerms & { readonly latestStretchOnly: boolean },
  runsOf: (load: string) => readonly string[],
  rows: ReadonlyMap<string, LoadRow>,
  history: LoggerHistory,
  pressurePascals: number,
): HoldJudgement | null {
  if (loads.length === 0) return null;
  const found = offsetPoints(loads, hold, (at) => stretchAt(starts, at), runsOf);
  const points = atUsualDuty(found.points);
  const { without } = found;
  const stretches = starts.map(({ from, event }, index): ThermostatStretch => {
    const own = points.filter(({ stretch }) => stretch === index);
    const earlier = starts
      .slice(0, index)
      .map((_, before) => points.filter(({ stretch }) => stretch === before).map(({ offsetKelvin }) => offsetKelvin));
    return {
      name: event === null ? "since the first load" : event.what,
      event,
      from: Number.isFinite(from) ? from : (points[0]?.at ?? loads[0]?.loadedAt ?? Number.NaN),
      to: starts[index + 1]?.from ?? loads.at(-1)?.loadedAt ?? Number.NaN,
      loads: own.length,
      ...(terms.latestStretchOnly && index < starts.length - 1
        ? UNJUDGED
        : judgeStretch(own, earlier, terms, checkErrors(own, history))),
    };
  });
  const latest = points.filter(({ stretch }) => stretch === starts.length - 1);
  const read = new Map(loads.map((load) => [load.load, load]));
  return {
    hold,
    points,
    without,
    stretches,
    evidence: driftEvidence(latest, rows, starts.at(-1)?.kilnRepairedAt),
    probes: probeEvidence(hold, latest, read, rows, pressurePascals),
  };
}

/** Only for a drift whose alarm stands: what no alarm was raised about has no effect to look for. */
function effectsOf(
  kiln: string,
  drying: HoldJudgement | null,
  starts: readonly StretchStart[],
  { kilnHours, moisture, loads }: ThermostatOptions,
): readonly DriftEffect[] {
  const latest = drying?.stretches.at(-1);
  const onset = latest?.models?.onset;
  if (!latest || !onset || !latest.alarm?.alarms.some(({ endedAt }) => endedAt === null)) return [];
  const stretchFrom = starts.at(-1)?.from ?? Number.NEGATIVE_INFINITY;
  return driftEffects({ kiln, stretchFrom, onset: onset.estimate }, kilnHours, moisture, loads);
}
