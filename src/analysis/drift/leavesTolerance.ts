import { fQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { changeInterval, levelInterval } from "./changeRegion.ts";
import type { CreepFit } from "./creepFit.ts";
import { clearMargin, type DriftModels, marginOf } from "./driftModels.ts";
import type { DriftSeries } from "./driftSeries.ts";
import { lineMovesAtMost } from "./lineMovesAtMost.ts";
import type { StepFit } from "./stepFit.ts";

/** What is judged, how, and as of when. */
export interface ToleranceQuestion {
  /** Half-width, in the value's unit: the value may lie from −tolerance to +tolerance. */
  readonly tolerance: number;
  /**
   * `absolute`: values are errors against the set point. `change`: only their distance from the level before the change
   * counts, where the probe does not sit at the bulb.
   */
  readonly of: "absolute" | "change";
  /** Standard error common to all values, from the logger's last check; 0 where not given. Not used for a change. */
  readonly commonStandardError?: number;
  /** Days ahead of the last load that are looked at; 365 where not given. */
  readonly horizonDays?: number;
  /** An alarm has been raised that nobody has settled: a constant is then no answer. */
  readonly alarmStands?: boolean;
}

/** When the value leaves its tolerance. Days in the series' own count. */
export type LeavesTolerance =
  /** The whole interval of the present level lies outside. Null: how long it has been so cannot be told. */
  | {
      readonly kind: "already-outside";
      readonly side: 1 | -1;
      readonly since: Interval | null;
      readonly levelNow: Interval;
    }
  /** `estimate` and `latest` are null where it may also not happen within the horizon, or never. */
  | {
      readonly kind: "dated";
      readonly side: 1 | -1;
      /** A model without a creep explains the loads as well, or nearly: then it may never leave, and `latest` is null. */
      readonly onlyIfCreep: boolean;
      readonly earliest: number;
      readonly estimate: number | null;
      readonly latest: number | null;
      readonly levelNow: Interval;
    }
  | { readonly kind: "not-within-horizon"; readonly horizonDays: number; readonly levelNow: Interval }
  | {
      readonly kind: "cannot-be-told";
      readonly why: "level-straddles" | "creep-not-excluded" | "alarm-unexplained";
      readonly levelNow: Interval;
    };

/**
 * The dates between which the value leaves its tolerance, from the model that won.
 *
 * A creep: the profile-likelihood interval of that date over onset, slope and level jointly, which is where the band of the
 * level at a date, over the models' region of onsets, meets the tolerance (for one onset this is Fieller's interval of a ratio,
 * 1954, Journal of the Royal Statistical Society B 16, 175–185; from memory). It supposes that the creep goes on as it went.
 * Where the creep did not win by a clear margin there is no latest date: it may have been a step. Where a step won, but not
 * clearly over the creep, the creep's earliest date stands.
 *
 * A constant or a step: a level leaves nothing, so the answer is `not-within-horizon` where neither the level's interval
 * nor the band of a straight line through the loads at that level reaches the tolerance within the horizon; else it cannot
 * be told from so few loads.
 *
 * @param series the one that the models were fitted to
 * @throws RangeError for a tolerance or horizon that is not positive, or a negative standard error
 */
export function leavesTolerance(
  series: DriftSeries,
  models: DriftModels,
  question: ToleranceQuestion,
): LeavesTolerance {
  const { tolerance, commonStandardError = 0, horizonDays = 365 } = question;
  if (!(tolerance > 0 && horizonDays > 0 && commonStandardError >= 0)) {
    throw new RangeError(
      `leavesTolerance requires a positive tolerance and horizon; got ${tolerance}, ${horizonDays}, ${commonStandardError}`,
    );
  }
  const asked = { alarmStands: false, ...question, commonStandardError, horizonDays };
  const { winner, creep } = models;
  if (creep && winner === "creep") return creepLeaves(creep, models, asked);
  const level = levelLeaves(series, models, asked);
  const creepIsNear = winner === "step" && marginOf(models, "creep") < clearMargin;
  return creep && creepIsNear && level.kind !== "already-outside" ? creepLeaves(creep, models, asked) : level;
}

type Asked = Required<ToleranceQuestion>;

function creepLeaves(creep: CreepFit, { sums, isClear, winner }: DriftModels, asked: Asked): LeavesTolerance {
  const { region, best, variance } = creep;
  const { tolerance, horizonDays } = asked;
  const extra = { extraVariance: asked.commonStandardError ** 2, variance };
  const bandAt = (time: number): Interval => {
    const column = (onset: number): number => Math.max(0, time - onset);
    return asked.of === "change"
      ? changeInterval(region, best, column)
      : levelInterval(sums, region, best, column, extra);
  };
  const start = sums.times[0] as number;
  const now = sums.times[sums.observations - 1] as number;
  const end = now + horizonDays / sums.spanDays;
  const levelNow = bandAt(now);
  const moves = best.effect > 0 ? 1 : -1;
  const dayOf = (time: number): number => sums.middleDay + time * sums.spanDays;
  /** First time from `from` to `to` at which one edge of the band, or its estimate, has reached the tolerance. */
  const crossing = (edge: (band: Interval) => number, from: number, to: number): number | null => {
    const beyond = (time: number): boolean => edge(bandAt(time)) >= tolerance;
    if (!beyond(to)) return null;
    if (beyond(from)) return dayOf(from);
    let [inside, outside] = [from, to];
    for (let halving = 0; halving < 50; halving += 1) {
      const middle = (inside + outside) / 2;
      if (beyond(middle)) outside = middle;
      else inside = middle;
    }
    return dayOf(outside);
  };
  const far = (band: Interval): number => (moves > 0 ? band.high : -band.low);
  const near = (band: Interval): number => (moves > 0 ? band.low : -band.high);
  const middle = (band: Interval): number => moves * band.estimate;

  if (near(levelNow) >= tolerance) {
    const since = {
      low: crossing(far, start, now) ?? dayOf(now),
      estimate: crossing(middle, start, now) ?? dayOf(now),
      high: crossing(near, start, now) ?? dayOf(now),
    };
    return { kind: "already-outside", side: moves, since, levelNow };
  }
  if (-far(levelNow) >= tolerance) {
    return { kind: "already-outside", side: moves > 0 ? -1 : 1, since: null, levelNow };
  }
  const earliest = crossing(far, start, far(levelNow) >= tolerance ? now : end);
  if (earliest === null) return { kind: "not-within-horizon", horizonDays, levelNow };
  return {
    kind: "dated",
    side: moves,
    onlyIfCreep: !isClear,
    earliest,
    estimate: winner === "creep" ? crossing(middle, start, end) : null,
    latest: isClear ? crossing(near, now, end) : null,
    levelNow,
  };
}

function levelLeaves(series: DriftSeries, models: DriftModels, asked: Asked): LeavesTolerance {
  const { tolerance, horizonDays } = asked;
  const step = models.winner === "step" ? models.step : null;
  const levelNow = presentLevel(models, step, asked);
  const outside = levelNow.low >= tolerance ? 1 : levelNow.high <= -tolerance ? -1 : null;
  if (outside !== null) {
    // A step that did not carry the level over the tolerance found it outside already.
    const crossed = step !== null && step.size.estimate * outside > 0;
    return { kind: "already-outside", side: outside, since: crossed ? step.onsetDay : null, levelNow };
  }
  if (levelNow.high >= tolerance || levelNow.low <= -tolerance) {
    return { kind: "cannot-be-told", why: "level-straddles", levelNow };
  }
  if (asked.alarmStands && step === null) return { kind: "cannot-be-told", why: "alarm-unexplained", levelNow };
  const away = lineMovesAtMost(series, step?.firstAfter ?? 0, asked.horizonDays, models.level);
  const stays = away !== null && Math.max(joined(levelNow, away).high, -joined(levelNow, away).low) < tolerance;
  return stays
    ? { kind: "not-within-horizon", horizonDays, levelNow }
    : { kind: "cannot-be-told", why: "creep-not-excluded", levelNow };
}

/** Sum of two independent estimates, each side's reach added as squares. */
function joined(a: Interval, b: Interval): Interval {
  const estimate = a.estimate + b.estimate;
  return {
    estimate,
    low: estimate - Math.hypot(a.estimate - a.low, b.estimate - b.low),
    high: estimate + Math.hypot(a.high - a.estimate, b.high - b.estimate),
  };
}

function presentLevel({ sums, constant, level }: DriftModels, step: StepFit | null, asked: Asked): Interval {
  const extraVariance = asked.commonStandardError ** 2;
  if (step) {
    const extra = { extraVariance, variance: step.variance };
    return asked.of === "change" ? step.size : levelInterval(sums, step.region, step.best, () => 1, extra);
  }
  if (asked.of === "change") return { estimate: 0, low: 0, high: 0 };
  const reach = constant.level.high - constant.level.estimate;
  const wider = Math.hypot(reach, Math.sqrt(extraVariance * fQuantile(level, 1, constant.degreesOfFreedom)));
  const { estimate } = constant.level;
  return { estimate, low: estimate - wider, high: estimate + wider };
}
