import { type DriftAlarm, driftAlarm } from "../../analysis/drift/driftAlarm.ts";
import { type DriftModels, fitDriftModels } from "../../analysis/drift/driftModels.ts";
import type { DriftSeries } from "../../analysis/drift/driftSeries.ts";
import { type LeavesTolerance, leavesTolerance } from "../../analysis/drift/leavesTolerance.ts";
import { mannKendall } from "../../analysis/drift/mannKendall.ts";
import { pettitt } from "../../analysis/drift/pettitt.ts";
import { theilSen } from "../../analysis/drift/theilSen.ts";
import { isFitFault, sayFitFault } from "../../analysis/fitFault.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import type { OffsetPoint, StretchAlarm, StretchModels } from "../thermostatResult.ts";
import { dutyColumns } from "./usualDuty.ts";

const DAY = 86_400_000;
const DAYS_A_MONTH = 30.44;
const WORDS = { observations: "loads", response: "offset" } as const;

/** What a tolerance is judged by. */
export interface ToleranceTerms {
  readonly toleranceKelvin: number;
  /** Absolute where the probe sits at the thermostat's bulb, else only as a change. */
  readonly probeAtBulb: boolean;
  /** Of the logger's last check, K. */
  readonly checkUncertaintyKelvin: number;
}

export interface JudgedStretch {
  readonly alarm: StretchAlarm | null;
  readonly models: StretchModels | null;
  readonly tooLittle: string | null;
}

const perMonth = ({ estimate, low, high }: Interval): Interval => ({
  estimate: estimate * DAYS_A_MONTH,
  low: low * DAYS_A_MONTH,
  high: high * DAYS_A_MONTH,
});

/**
 * One stretch between calibrations: the two charts that alarm, the three models that say what a change looks like, and when
 * the offset leaves its tolerance.
 *
 * @param earlier offsets of the stretches before, each in time order: they help to tell the spread, never the level
 * @param sharedErrors what the logger's checks may be off by, from `checkErrors`: it widens the models' intervals
 */
export function judgeStretch(
  points: readonly OffsetPoint[],
  earlier: readonly (readonly number[])[],
  terms: ToleranceTerms,
  sharedErrors: readonly (readonly number[])[] = [],
): JudgedStretch {
  const first = points[0]?.at ?? 0;
  const values = points.map(({ offsetKelvin }) => offsetKelvin);
  const days = points.map(({ at }) => (at - first) / DAY);
  const alarm = driftAlarm({ values, earlier });
  const duties = points.flatMap(({ duty }) => (duty === null ? [] : [duty]));
  // Where every load has its duty the models carry it, so that its own uncertainty widens theirs.
  const covariates = duties.length === points.length ? dutyColumns(duties) : [];
  const plain = { days, values, sharedErrors };
  const carried = fitDriftModels({ ...plain, covariates });
  const series = isFitFault(carried) ? plain : { ...plain, covariates };
  const models = isFitFault(carried) ? fitDriftModels(series) : carried;
  const raised = isFault(alarm) ? null : alarmOf(alarm, points, NOTICEABLE * terms.checkUncertaintyKelvin);
  const fault = isFitFault(models) ? models : isFault(alarm) ? alarm : null;
  return {
    alarm: raised,
    models: isFitFault(models)
      ? null
      : modelsOf(models, series, points, {
          ...terms,
          alarmStands: raised?.alarms.some(({ endedAt }) => endedAt === null) ?? false,
        }),
    tooLittle: fault === null ? null : sayFitFault(fault, WORDS),
  };
}

const isFault = (found: ReturnType<typeof driftAlarm>): found is Exclude<ReturnType<typeof driftAlarm>, DriftAlarm> =>
  isFitFault(found);

/**
 * A drift smaller than twice what a check of the logger leaves open could be the logger's: the charts may see it, but nobody
 * could confirm it with a thermometer.
 */
const NOTICEABLE = 2;

/** The chart's alarms, each from the load at which its running mean had also come noticeably far. */
function alarmOf(
  { baseline, weightedMean, alarms }: DriftAlarm,
  points: readonly OffsetPoint[],
  noticeableKelvin: number,
): StretchAlarm {
  const noticed = alarms.flatMap((alarm) => {
    const last = points.length - 1;
    for (let index = alarm.raisedAt; index <= Math.min(alarm.to, last); index += 1) {
      const mean = weightedMean.means[index - baseline.loads] ?? 0;
      if (Math.abs(mean) > noticeableKelvin) return [{ ...alarm, raisedAt: index }];
    }
    return [];
  });
  return {
    baselineLoads: baseline.loads,
    baselineLevelKelvin: baseline.level,
    sigmaKelvin: baseline.sigma,
    weightedMean: { means: weightedMean.means, reach: weightedMean.reach },
    alarms: noticed.map(({ from, raisedAt, endedAt, direction, raisedBy }) => ({
      fromLoad: points[from]?.load ?? "",
      raisedAtLoad: points[raisedAt]?.load ?? "",
      raisedAt: points[raisedAt]?.at ?? Number.NaN,
      endedAt: endedAt === null ? null : (points[endedAt]?.at ?? Number.NaN),
      direction,
      raisedBy,
    })),
  };
}

function modelsOf(
  models: DriftModels,
  series: DriftSeries & { readonly days: readonly number[]; readonly values: readonly number[] },
  points: readonly OffsetPoint[],
  terms: ToleranceTerms & { readonly alarmStands: boolean },
): StretchModels {
  const first = points[0]?.at ?? 0;
  const moment = (day: number): number => first + day * DAY;
  const dated = ({ estimate, low, high }: Interval): Interval => ({
    estimate: moment(estimate),
    low: moment(low),
    high: moment(high),
  });
  const { winner, creep, step, constant } = models;
  const change = winner === "creep" ? creep : winner === "step" ? step : null;
  const sen =
    winner === "creep" && creep !== null
      ? theilSen(series.days, series.values, { from: creep.onsetDay.estimate })
      : null;
  const split = pettitt(series.values);
  return {
    winner,
    isClear: models.isClear,
    scores: models.scores,
    onset: change === null ? null : dated(change.onsetDay),
    kelvinPerMonth: winner === "creep" && creep !== null ? perMonth(creep.slopePerDay) : null,
    stepKelvin: winner === "step" && step !== null ? step.size : null,
    levelKelvin: change === null ? constant.level : change.levelBefore,
    line: lineOf(models, points, moment),
    leaves: datedLeaves(
      leavesTolerance(series, models, {
        tolerance: terms.toleranceKelvin,
        of: terms.probeAtBulb ? "absolute" : "change",
        alarmStands: terms.alarmStands,
        commonStandardError: terms.probeAtBulb ? terms.checkUncertaintyKelvin : 0,
      }),
      moment,
      dated,
    ),
    theilSenKelvinPerMonth: sen === null ? null : perMonth(sen.slopePerDay),
    mannKendallP: mannKendall(series.days, series.values)?.p ?? null,
    pettitt: split === null ? null : { at: points[split.loadsBefore]?.at ?? Number.NaN, p: split.p },
  };
}

function lineOf(
  { winner, creep, step, constant }: DriftModels,
  points: readonly OffsetPoint[],
  moment: (day: number) => number,
): StretchModels["line"] {
  const start = points[0]?.at ?? Number.NaN;
  const end = points.at(-1)?.at ?? Number.NaN;
  if (winner === "creep" && creep !== null) {
    const before = creep.levelBefore.estimate;
    return [
      { at: start, kelvin: before },
      { at: moment(creep.onsetDay.estimate), kelvin: before },
      { at: end, kelvin: creep.levelNow.estimate },
    ];
  }
  if (winner === "step" && step !== null) {
    const at = moment(step.onsetDay.estimate);
    return [
      { at: start, kelvin: step.levelBefore.estimate },
      { at, kelvin: step.levelBefore.estimate },
      { at, kelvin: step.levelNow.estimate },
      { at: end, kelvin: step.levelNow.estimate },
    ];
  }
  const level = constant.level.estimate;
  return [
    { at: start, kelvin: level },
    { at: end, kelvin: level },
  ];
}

/** The same answer with moments where the statistics count days. */
function datedLeaves(
  leaves: LeavesTolerance,
  moment: (day: number) => number,
  dated: (days: Interval) => Interval,
): LeavesTolerance {
  if (leaves.kind === "dated") {
    return {
      ...leaves,
      earliest: moment(leaves.earliest),
      estimate: leaves.estimate === null ? null : moment(leaves.estimate),
      latest: leaves.latest === null ? null : moment(leaves.latest),
    };
  }
  return leaves.kind === "already-outside" && leaves.since !== null
    ? { ...leaves, since: dated(leaves.since) }
    : leaves;
}
