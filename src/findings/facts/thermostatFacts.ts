import type { Fact, LoggerFact, ThermostatFact } from "../../report/fact.ts";
import type {
  HoldName,
  KilnThermostat,
  LoggerFault,
  LoggerTrust,
  StretchModels,
} from "../../report/thermostatResult.ts";
import { holdVerdict, isAlarmed } from "../holdVerdict.ts";
import { loggerDoubts } from "../loggerDoubts.ts";
import { chanceAlarmReal, chanceReal } from "./chanceReal.ts";
import { batchesAMonth, concerns, type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";
import { switchingFacts } from "./switchingFacts.ts";

const DAY = 86_400_000;
/** So near to each other checks are one sitting. */
const ONE_SITTING = DAY / 2;
const HOLDS: readonly HoldName[] = ["drying", "cure"];

/**
 * One month in twenty a thermostat begins to move; the charts see it nine times in ten, and alarm by themselves 0.6 times in
 * 100 loads (our own simulated houses: `npm run bench -- drift`).
 */
const BEFORE = { share: 0.05, power: 0.9 };
const FALSE_PER_LOAD = 0.0063;

/** What a thermostat that moves usually comes to: kelvins a month of a creep, kelvins of a step (common practice). */
const CREEP_SIZE = 0.5;
const STEP_SIZE = 1.5;

/** An alarm says that something may have moved; how far, by the model that explains it, says whether to believe it. */
function chanceOf(frame: FactFrame, models: StretchModels | null): number {
  const alarmed = chanceAlarmReal(FALSE_PER_LOAD * Math.max(LATEST_RUNS, frame.monthRuns.length), BEFORE);
  const creep = models?.kelvinPerMonth ?? null;
  const step = models?.stepKelvin ?? null;
  if (creep !== null) return chanceReal(creep, { share: alarmed, size: CREEP_SIZE });
  return step === null ? alarmed : chanceReal(step, { share: alarmed, size: STEP_SIZE });
}

type Verdict = ReturnType<typeof holdVerdict>;

function shapeOf(kiln: KilnThermostat, hold: HoldName, verdict: Verdict): ThermostatFact["shape"] | null {
  if (!isAlarmed(verdict)) return null;
  const speaks = new Set(kiln[hold]?.evidence.flatMap(({ kind, speaks }) => (speaks === "for" ? [kind] : [])));
  if (!speaks.has("set point") && speaks.has("worn contacts")) return "worn contacts";
  if (!speaks.has("set point") && speaks.has("weak heater or fan")) return "weak heater or fan";
  return verdict.kind === "creep" || verdict.kind === "step" ? verdict.kind : "unexplained";
}

/** Hours and energy that the drift takes, where the models could tell; malt is counted by the moisture's own chart. */
function lossOf(frame: FactFrame, kiln: KilnThermostat): ThermostatFact["loss"] {
  const hours = kiln.effects.find(({ measure }) => measure === "kiln hours")?.effect?.estimate ?? 0;
  return { ...noLoss, kilnHours: Math.max(0, hours) * batchesAMonth(frame) };
}

function holdFact(frame: FactFrame, kiln: KilnThermostat, hold: HoldName): ThermostatFact | null {
  const verdict = holdVerdict(kiln[hold]);
  const shape = shapeOf(kiln, hold, verdict);
  if (shape === null || verdict.kind === "none" || verdict.kind === "tooFew" || verdict.kind === "steady") return null;
  const { stretch } = verdict;
  const models = "models" in verdict ? verdict.models : null;
  const from = models?.onset?.estimate ?? stretch.alarm?.alarms.at(-1)?.raisedAt ?? stretch.from;
  const points = (kiln[hold]?.points ?? []).filter(({ at }) => at >= from);
  const latest = points.at(-1)?.at ?? stretch.to;
  if (!concerns(frame, from, latest)) return null;
  const runs = points.flatMap((point) => point.runs);
  const leaves = models?.leaves ?? null;
  return {
    kind: "thermostat",
    kiln: kiln.kiln,
    hold,
    shape,
    movedKelvin: "movedKelvin" in verdict ? verdict.movedKelvin : 0,
    widerKelvin: null,
    kelvinPerMonth: models?.kelvinPerMonth ?? null,
    leavesFrom: leaves?.kind === "dated" ? leaves.earliest : leaves?.kind === "already-outside" ? latest : null,
    leavesTo: leaves?.kind === "dated" ? leaves.latest : leaves?.kind === "already-outside" ? latest : null,
    loggerDoubt: loggerDoubts(kiln).length > 0,
    from,
    // The kiln's own last load, which may be later than the last in which this hold could be read.
    to: Math.max(latest, kiln.loads.at(-1)?.loadedAt ?? latest),
    runs: namedRuns(runs),
    runCount: runs.length,
    chanceReal: chanceOf(frame, models),
    loss: lossOf(frame, kiln),
    beside: [],
  };
}

/** Was it the last check that found it, and did that sitting not end with the logger set right? */
function stillStands({ at, errorKelvin }: LoggerFault, last: LoggerTrust["checks"][number] | undefined): boolean {
  if (last === undefined || Math.abs(last.at - at) > ONE_SITTING) return false;
  return (last.readingCelsius - last.referenceCelsius) * Math.sign(errorKelvin) > Math.abs(errorKelvin) / 2;
}

/** A fault that its checks found in the month, or that stands since the last of them; or a check that is overdue. */
function loggerFact(frame: FactFrame, kiln: KilnThermostat): LoggerFact | null {
  const { logger } = kiln;
  const checks = logger.checks.filter(({ at, probe }) => at < frame.before && probe === "air_on");
  const fault = logger.faults
    .filter(({ at }) => at < frame.before)
    .filter((found) => found.at >= frame.from || stillStands(found, checks.at(-1)))
    .at(-1);
  const read = kiln.loads.filter(({ loadedAt }) => loadedAt < frame.before);
  const last = read.at(-1);
  if (last === undefined || (fault === undefined && !logger.stale)) return null;
  const since = logger.daysSinceCheck === null ? read[0]?.loadedAt : last.loadedAt - logger.daysSinceCheck * DAY;
  return {
    kind: "logger",
    kiln: kiln.kiln,
    errorKelvin: fault?.errorKelvin ?? null,
    daysSinceCheck: logger.daysSinceCheck,
    from: fault?.at ?? since ?? last.loadedAt,
    to: last.loadedAt,
    runs: [],
    runCount: 0,
    // What a check found is found; that a check is overdue is a matter of the calendar.
    chanceReal: 1,
    loss: noLoss,
    beside: [],
  };
}

/** Thermostats that move, and loggers that may be the ones that do. */
export function thermostatFacts(frame: FactFrame): readonly Fact[] {
  return frame.report.thermostat.kilns.flatMap((kiln): Fact[] =>
    [
      ...HOLDS.map((hold) => holdFact(frame, kiln, hold)),
      ...switchingFacts(frame, kiln),
      loggerFact(frame, kiln),
    ].filter((fact) => fact !== null),
  );
}
