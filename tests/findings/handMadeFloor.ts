import type { Interval } from "../../src/analysis/regressionFit.ts";
import type { AcrospireRun, SteepGerminationResult, SteepRun } from "../../src/report/steepGerminationResult.ts";

const DAY = 86_400_000;
const FIRST = Date.UTC(2025, 0, 6, 17);

export const around = (estimate: number, reach: number): Interval => ({
  estimate,
  low: estimate - reach,
  high: estimate + reach,
});

/** A steep wanted between 43 and 46 % with an aim of 44.5. */
export const steep = (index: number, steepOutPercent: number | null, changes: Partial<SteepRun> = {}): SteepRun => ({
  run: `R${index}`,
  variety: "Amber",
  lot: "L1",
  startedAt: FIRST + index * 4 * DAY,
  waterCelsius: 12,
  wetHours: 12,
  airRestHours: 11,
  hours: 24,
  grainMoisturePercent: 12.4,
  measuredPercent: null,
  fromMassGainPercent: steepOutPercent,
  steepOutPercent,
  basis: "from mass gain",
  chittedPercent: 86,
  target: { low: 43, target: 44.5, high: 46 },
  ...changes,
});

/** A hundred kernels of which the mean lies at `mean`, give or take 0.04, wanted between 0.65 and 0.9. */
export const acrospire = (index: number, mean: number, changes: Partial<AcrospireRun> = {}): AcrospireRun => ({
  run: `R${index}`,
  variety: "Amber",
  at: FIRST + index * 4 * DAY + 5 * DAY,
  hours: 96,
  bedMeanCelsius: 15,
  counts: { none: 1, toQuarter: 2, toHalf: 7, toThreeQuarters: 50, toFull: 37, over: 3 },
  counted: 100,
  meanLength: around(mean, 0.04),
  evenPercent: around(87, 6),
  undergrownPercent: around(10, 5),
  overgrownPercent: { estimate: 3, low: 1, high: 8.5 },
  beds: [],
  targets: { meanLow: 0.65, meanTarget: 0.78, meanHigh: 0.9, overgrownHigh: 15 },
  ...changes,
});

type Timetable = NonNullable<NonNullable<SteepGerminationResult["growth"]>["timetable"]>;

/** Hours against a timetable of 96 h, one for each whole degree from 13 on. */
export function timetableOf(against: readonly Interval[]): Timetable {
  return {
    aimLength: 0.78,
    usualHours: 96,
    rows: against.map((againstTimetableHours, i) => ({
      celsius: 13 + i,
      hours: {
        estimate: 96 + againstTimetableHours.estimate,
        low: 96 + againstTimetableHours.low,
        high: 96 + againstTimetableHours.high,
      },
      againstTimetableHours,
      beyondHoursCounted: false,
      lengthAtUsualHours: around(0.78 - againstTimetableHours.estimate / 150, 0.01),
    })),
    refused: [],
  };
}

/** Logs that hold nothing. */
export const nothing: SteepGerminationResult = {
  steeps: [],
  steepTooLittle: "No steep is logged among these batches.",
  bias: null,
  uptake: null,
  uptakeTooLittle: "No steep has both its wet hours and its moisture.",
  chitted: null,
  acrospires: [],
  acrospireTooLittle: "No kernels were counted at unloading in these batches.",
  beds: { compared: 0, lags: [], byBed: [] },
  growth: null,
  growthTooLittle: "No counts on the way.",
  countSize: null,
  lengthOnTemperature: null,
};
