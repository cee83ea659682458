import type { BedFact, Fact, TimetableFact } from "../../report/fact.ts";
import type { AcrospireRun } from "../../report/steepGerminationResult.ts";
import { chanceReal } from "./chanceReal.ts";
import { meanOf, shiftOf } from "./effectMean.ts";
import { type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";

/** A twelfth of the kernel's length is a trouble of middling size: the width of a class is a quarter (acrospire classes). */
const BEFORE = { share: 0.1, size: 0.08 };
const LEAST_LENGTH = 0.04;
/** A fixed timetable misses the season's temperature in every third month (our own simulated houses, in their invented climate). */
const MISFITS = 0.3;
const DAY = 86_400_000;

/** Latest batches against those before them. */
function halves(frame: FactFrame) {
  const latest = new Set(frame.latestRuns.map(({ run }) => run));
  const all = frame.report.steepGermination.acrospires.filter(({ at }) => at < frame.before);
  return { now: all.filter(({ run }) => latest.has(run)), earlier: all.filter(({ run }) => !latest.has(run)) };
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
  const { now } = halves(frame);
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
    chanceReal: chanceReal(lengthOver, { ...BEFORE, share: MISFITS }),
    ...spanOf(now, frame),
  };
}

const FARTHEST_KELVIN = 0.75;

function nearestTo<Row extends { readonly celsius: number }>(rows: readonly Row[], celsius: number): Row | undefined {
  const near = rows.filter((row) => Math.abs(row.celsius - celsius) <= FARTHEST_KELVIN);
  return near.toSorted((a, b) => Math.abs(a.celsius - celsius) - Math.abs(b.celsius - celsius))[0];
}

/** A bed's length less the mean of the other beds of its batch. */
function besideOthers({ beds }: AcrospireRun, name: string): number | null {
  const own = beds.find(({ bed }) => bed === name)?.meanLength ?? null;
  const others = beds.flatMap(({ bed, meanLength }) => (bed === name ? [] : (meanLength ?? [])));
  return own === null || others.length === 0
    ? null
    : own - others.reduce((sum, length) => sum + length, 0) / others.length;
}

/** Beds lie side by side in some batches only, so that a bed's own latest reach back further than the month; but no further than this. */
const BED_DAYS = 200;

function bedFact(frame: FactFrame, bed: string): BedFact | null {
  const beside = frame.report.steepGermination.acrospires.filter(
    (run) => run.at < frame.before && besideOthers(run, bed) !== null,
  );
  const latest = beside.slice(-LATEST_RUNS);
  const [first, last] = [latest[0], latest.at(-1)];
  if (!first || !last || last.at < frame.from || last.at - first.at > BED_DAYS * DAY) return null;
  const off = (of: readonly AcrospireRun[]) => of.flatMap((run) => besideOthers(run, bed) ?? []);
  const difference = shiftOf(off(beside.slice(0, -LATEST_RUNS)), off(latest));
  if (difference === null || Math.abs(difference.estimate) < LEAST_LENGTH) return null;
  const chance = chanceReal(difference, { ...BEFORE, share: 0.05 });
  return { kind: "bed", bed, difference, chanceReal: chance, ...spanOf(latest, frame) };
}

/**
 * A bed that has begun to lag behind, or to run ahead of, those beside it. One that lags makes the others look ahead: the one that is
 * furthest off is named, and of two alike the shorter.
 */
function bedFacts(frame: FactFrame): readonly BedFact[] {
  const { acrospires } = frame.report.steepGermination;
  const names = [...new Set(acrospires.flatMap(({ beds }) => beds.map(({ bed }) => bed)))].sort();
  const found = names.map((bed) => bedFact(frame, bed)).filter((fact) => fact !== null);
  const size = ({ difference }: BedFact): number => Math.abs(difference.estimate);
  return found.toSorted((a, b) => size(b) - size(a) || a.difference.estimate - b.difference.estimate).slice(0, 1);
}

export function floorFacts(frame: FactFrame): readonly Fact[] {
  const timetable = timetableFact(frame);
  return [...(timetable === null ? [] : [timetable]), ...bedFacts(frame)];
}
