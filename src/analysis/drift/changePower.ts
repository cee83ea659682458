import { quantile } from "../summary.ts";
import type { DriftModels } from "./driftModels.ts";
import {
  alarmOf,
  type DriftPowerOptions,
  driftPowerDefaults,
  type HouseShare,
  modelsOf,
  onsetLoads,
  simulationOf,
  soFar,
} from "./driftPowerOptions.ts";
import type { DriftSeries } from "./driftSeries.ts";
import { leavesTolerance } from "./leavesTolerance.ts";
import { type DriftTruth, daysInMonth, simulateOffsets } from "./simulateOffsets.ts";

/** A thermostat that creeps or slips. */
export type DriftChange = Exclude<DriftTruth, { readonly kind: "quiet" }>;

/** What the alarm made of houses whose thermostat changes, and the models a month after it. */
export interface ChangePower {
  readonly truth: DriftChange;
  /** Alarmed before the true offset leaves the tolerance; null for a slip, which leaves it at once or never. */
  readonly alarmedBefore: HouseShare | null;
  /** Loads from the onset to the alarm, that load counted: median, and what nine in ten stay within. */
  readonly loadsUntilAlarm: { readonly median: number; readonly nineInTen: number };
  readonly winnerRight: HouseShare;
  /** A creep clearly called a step, or a step a creep. */
  readonly clearlyWrong: HouseShare;
  /** The winner is right and clear; where neither this nor the last, both kinds would be named. */
  readonly clearlyRight: HouseShare;
  /** 95 % intervals of the right model that hold the truth, whether it won or not. */
  readonly onsetCovered: HouseShare;
  readonly sizeCovered: HouseShare;
  /** The same where it won, which is when a page shows them. */
  readonly onsetCoveredWhereWon: HouseShare;
  readonly sizeCoveredWhereWon: HouseShare;
  /** Ranges of dates, where one could be told, that hold the day on which a creep leaves the tolerance; null for a slip. */
  readonly dateCovered: HouseShare | null;
}

/**
 * Simulates houses whose thermostat changes between the 10th and the 50th load after the calibration, one a seed, and counts
 * what the alarm and the models make of them. For the bench: some milliseconds a house.
 *
 * @example changePower({ kind: "creep", perMonth: 0.5 }, [1, 2, 3]).alarmedBefore
 */
export function changePower(
  truth: DriftChange,
  seeds: readonly number[],
  changes: Partial<DriftPowerOptions> = {},
): ChangePower {
  const options = { ...driftPowerDefaults, ...changes };
  const houses = seeds.map((seed) => tryHouse(seed, truth, options));
  const verdicts = houses.flatMap(({ verdict }) => (verdict ? [verdict] : []));
  const won = verdicts.filter(({ isRight }) => isRight);
  const dates = verdicts.filter(({ dateCovered }) => dateCovered !== null);
  const waits = houses.map(({ loadsUntilAlarm }) => loadsUntilAlarm);
  const share = <Of>(of: readonly Of[], counts: (one: Of) => boolean): HouseShare => ({
    count: of.filter(counts).length,
    of: of.length,
  });
  return {
    truth,
    alarmedBefore: truth.kind === "creep" ? share(houses, ({ isBefore }) => isBefore) : null,
    loadsUntilAlarm: { median: quantile(waits, 0.5), nineInTen: quantile(waits, 0.9) },
    winnerRight: share(verdicts, ({ isRight }) => isRight),
    clearlyWrong: share(verdicts, ({ isOther, isClear }) => isOther && isClear),
    clearlyRight: share(verdicts, ({ isRight, isClear }) => isRight && isClear),
    onsetCovered: share(verdicts, ({ onsetCovered }) => onsetCovered),
    sizeCovered: share(verdicts, ({ sizeCovered }) => sizeCovered),
    onsetCoveredWhereWon: share(won, ({ onsetCovered }) => onsetCovered),
    sizeCoveredWhereWon: share(won, ({ sizeCovered }) => sizeCovered),
    dateCovered: truth.kind === "creep" ? share(dates, ({ dateCovered }) => dateCovered === true) : null,
  };
}

interface HouseOutcome {
  readonly isBefore: boolean;
  /** Infinite where no alarm comes in all loads simulated. */
  readonly loadsUntilAlarm: number;
  readonly verdict: Verdict | null;
}

interface Verdict {
  readonly isRight: boolean;
  readonly isOther: boolean;
  readonly isClear: boolean;
  readonly onsetCovered: boolean;
  readonly sizeCovered: boolean;
  readonly dateCovered: boolean | null;
}

function tryHouse(seed: number, truth: DriftChange, options: DriftPowerOptions): HouseOutcome {
  const { loadsPerMonth, tolerance } = options;
  // Long enough for the creep to leave the tolerance, and for the month after an alarm that came as late as that.
  const months = truth.kind === "creep" ? tolerance / truth.perMonth + 3 : 6;
  const loads = onsetLoads[1] + Math.ceil(months * loadsPerMonth);
  const house = simulateOffsets(seed, truth, simulationOf(options, loads));
  const onset = house.onsetDay as number;
  // An alarm that stood already when the change began, on the same side, is there for it from its first load.
  const alarm = alarmOf(house, options).alarms.find(
    ({ to, direction }) => direction === "up" && to >= house.firstAfter,
  );
  if (!alarm) return { isBefore: false, loadsUntilAlarm: Number.POSITIVE_INFINITY, verdict: null };
  const raisedAt = Math.max(alarm.raisedAt, house.firstAfter);
  const leavesOn = truth.kind === "creep" ? onset + (tolerance / truth.perMonth) * daysInMonth : null;
  const series = soFar(house, Math.min(loads, raisedAt + 1 + loadsPerMonth));
  const models = modelsOf(series);
  return {
    isBefore: leavesOn !== null && (house.days[raisedAt] as number) < leavesOn,
    loadsUntilAlarm: raisedAt - house.firstAfter + 1,
    verdict: {
      isRight: models.winner === (truth.kind === "creep" ? "creep" : "step"),
      isOther: models.winner === (truth.kind === "creep" ? "step" : "creep"),
      isClear: models.isClear,
      ...changeCovered(models, truth, onset),
      dateCovered: leavesOn === null ? null : holdsDate(series, models, tolerance, leavesOn),
    },
  };
}

function changeCovered(
  { creep, step }: DriftModels,
  truth: DriftChange,
  onset: number,
): Pick<Verdict, "onsetCovered" | "sizeCovered"> {
  const change = truth.kind === "creep" ? creep : step;
  const size = truth.kind === "creep" ? creep?.slopePerDay : step?.size;
  const actual = truth.kind === "creep" ? truth.perMonth / daysInMonth : truth.size;
  return {
    onsetCovered: change !== null && change.onsetDay.low <= onset && onset <= change.onsetDay.high,
    sizeCovered: size !== undefined && size.low <= actual && actual <= size.high,
  };
}

/** Whether the range of dates holds the day; null where it cannot be told. */
function holdsDate(series: DriftSeries, models: DriftModels, tolerance: number, day: number): boolean | null {
  const answer = leavesTolerance(series, models, { tolerance, of: "absolute", alarmStands: true });
  switch (answer.kind) {
    case "dated":
      return answer.earliest <= day && day <= (answer.latest ?? Number.POSITIVE_INFINITY);
    case "already-outside":
      return answer.since !== null && answer.since.low <= day && day <= answer.since.high;
    case "not-within-horizon":
      return day > (series.days[series.days.length - 1] as number) + answer.horizonDays;
    case "cannot-be-told":
      return null;
  }
}
