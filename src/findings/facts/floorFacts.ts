import type { Fact, TimetableFact } from "../../report/fact.ts";
import type { AcrospireRun } from "../../report/steepGerminationResult.ts";
import { bedFacts } from "./bedFacts.ts";
import { chanceReal } from "./chanceReal.ts";
import { meanOf } from "./effectMean.ts";
import { type FactFrame, namedRuns, noLoss } from "./factFrame.ts";

/** A fixed timetable misses the season's temperature in every third month (our own simulated houses, in their invented climate). */
const MISFITS = 0.3;
/** A twelfth of the kernel's length is a trouble of middling size: the width of a class is a quarter (acrospire classes). */
const BEFORE = { share: MISFITS, size: 0.08 };
const LEAST_LENGTH = 0.04;

/** The latest batches that were counted. */
function latestCounted(frame: FactFrame): readonly AcrospireRun[] {
  const latest = new Set(frame.latestRuns.map(({ run }) => run));
  return frame.report.steepGermination.acrospires.filter(({ at, run }) => at < frame.before && latest.has(run));
}

const spanOf = (of: readonly AcrospireRun[], frame: FactFrame) => ({
  from: of[0]?.at ?? frame.from,
  to: of.at(-1)?.at ?? frame.from,
  runs: namedRuns(of.map(({ run }) => run)),
  runCount: of.length,
  loss: noLoss,
  beside: [],
});

/** What the house aims at: its target, else the middle of what it accepts, else its own mean so far. */
function aimOf({ targets }: AcrospireRun): number | null {
  if (targets === null) return null;
  const { meanLow, meanTarget, meanHigh } = targets;
  return meanTarget ?? (meanLow !== null && meanHigh !== null ? (meanLow + meanHigh) / 2 : null);
}

/** The timetable gives malt that is shorter or longer than the aim, and for how many hours that is. */
function timetableFact(frame: FactFrame): TimetableFact | null {
  const now = latestCounted(frame);
  const over = now.flatMap((run) => {
    const aim = aimOf(run);
    return aim === null ? [] : [run.meanLength.estimate - aim];
  });
  const lengthOver = meanOf(over);
  if (lengthOver === null || Math.abs(lengthOver.estimate) < LEAST_LENGTH) return null;
  const temperatures = now.flatMap(({ bedMeanCelsius }) => bedMeanCelsius ?? []);
  const bedMeanCelsius =
    temperatures.length === 0 ? null : temperatures.reduce((sum, value) => sum + value, 0) / temperatures.length;
  const rows = frame.report.steepGermination.growth?.timetable?.rows ?? [];
  const nearest = bedMeanCelsius === null ? undefined : nearestTo(rows, bedMeanCelsius);
  // Hours to the aim less the timetable's: below 0 the timetable is too long.
  const hoursOver =
    nearest === undefined
      ? null
      : {
          estimate: -nearest.againstTimetableHours.estimate,
          low: -nearest.againstTimetableHours.high,
          high: -nearest.againstTimetableHours.low,
        };
  return {
    kind: "timetable",
    lengthOver,
    hoursOver,
    bedMeanCelsius,
    chanceReal: chanceReal(lengthOver, BEFORE),
    ...spanOf(now, frame),
  };
}

const FARTHEST_KELVIN = 0.75;

function nearestTo<Row extends { readonly celsius: number }>(rows: readonly Row[], celsius: number): Row | undefined {
  const near = rows.filter((row) => Math.abs(row.celsius - celsius) <= FARTHEST_KELVIN);
  return near.toSorted((a, b) => Math.abs(a.celsius - celsius) - Math.abs(b.celsius - celsius))[0];
}

/** A timetable that does not suit, and a bed that has left the others. */
export function floorFacts(frame: FactFrame): readonly Fact[] {
  const timetable = timetableFact(frame);
  return [...(timetable === null ? [] : [timetable]), ...bedFacts(frame)];
}
