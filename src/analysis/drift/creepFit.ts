import { fQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { effectInterval, levelInterval, type RegionPoint } from "./changeRegion.ts";
import type { ChangeSums } from "./changeSums.ts";
import { fewestLoadsASide } from "./fewestLoads.ts";

/** Level up to the onset, then an even rise or fall. */
export interface CreepFit {
  /** `low` is the first load's day where a rise from the start cannot be excluded: see `mayRiseFromTheStart`. */
  readonly onsetDay: Interval;
  readonly mayRiseFromTheStart: boolean;
  readonly slopePerDay: Interval;
  readonly levelBefore: Interval;
  /** At the last load. */
  readonly levelNow: Interval;
  readonly residualSquares: number;
  readonly degreesOfFreedom: number;
  /** Residual variance that the intervals go by, widened as asked for. */
  readonly variance: number;
  readonly region: readonly RegionPoint[];
  readonly best: RegionPoint;
}

/** Points of the region in all, about; each stretch between two loads has at least five. */
const regionPoints = 600;

/**
 * Least-squares flat-then-rising line: level + slope × max(0, day − onset), with the onset anywhere from the first load to
 * the third last. Between two loads the residual squares are a ratio of quadratics in the onset, so that the best
 * onset (Hudson 1966, Journal of the American Statistical Association 61, 1097–1129; from memory) and the ends of its
 * profile interval are exact, not searched for.
 *
 * The intervals of onset, slope and levels are profile intervals, least residual squares + s² F(1, ν). An onset before the
 * first load cannot be told from one at it.
 *
 * @param widening by how much the residual variance is raised for the intervals, from `changeWidening`
 * @returns null where no onset leaves loads on different days
 */
export function fitCreep(sums: ChangeSums, level: number, widening = 1): CreepFit | null {
  const { observations, levelParameters, days, times, spanDays, middleDay } = sums;
  let best: RegionPoint | null = null;
  let residualSquares = Number.POSITIVE_INFINITY;
  const intervals = openIntervals(sums);
  for (const split of intervals) {
    for (const onset of candidates(sums, split)) {
      const squares = squaresAt(sums, split, onset);
      if (squares < residualSquares * (1 - 1e-12)) {
        residualSquares = squares;
        best = pointAt(sums, split, onset, 0);
      }
    }
  }
  if (best === null) return null;

  const degreesOfFreedom = observations - levelParameters - 2;
  const variance = (widening * residualSquares) / degreesOfFreedom;
  const slack = fQuantile(level, 1, degreesOfFreedom) * variance;
  const limit = residualSquares + slack;
  const pieces = intervals.flatMap((split) => within(sums, split, limit).map((piece) => ({ split, ...piece })));
  const each = Math.max(5, Math.ceil(regionPoints / Math.max(1, pieces.length)));
  const region: RegionPoint[] = [{ ...best, slack }];
  let [earliest, latest] = [best.onset, best.onset];
  for (const { split, from, to } of pieces) {
    earliest = Math.min(earliest, from);
    latest = Math.max(latest, to);
    for (let at = 0; at < each; at += 1) {
      const onset = from + ((to - from) * at) / (each - 1);
      region.push(pointAt(sums, split, onset, Math.max(0, limit - squaresAt(sums, split, onset))));
    }
  }
  const dayAt = (time: number): number => middleDay + time * spanDays;
  const slope = effectInterval(region, best.effect);
  const now = times[observations - 1] as number;
  const mayRiseFromTheStart = earliest <= (times[0] as number) + 1e-9;
  return {
    onsetDay: {
      estimate: dayAt(best.onset),
      low: mayRiseFromTheStart ? (days[0] as number) : dayAt(earliest),
      high: dayAt(latest),
    },
    mayRiseFromTheStart,
    slopePerDay: {
      estimate: slope.estimate / spanDays,
      low: slope.low / spanDays,
      high: slope.high / spanDays,
    },
    levelBefore: levelInterval(sums, region, best, () => 0),
    levelNow: levelInterval(sums, region, best, (onset) => now - onset),
    residualSquares,
    degreesOfFreedom,
    variance,
    region,
    best: region[0] as RegionPoint,
  };
}

/** Splits whose stretch before them, between two days, may hold the onset. */
function openIntervals({ observations, times, splits, totalWeight }: ChangeSums): number[] {
  const open: number[] = [];
  for (let split = 1; split <= observations - fewestLoadsASide; split += 1) {
    const [from, to] = [times[split - 1] as number, times[split] as number];
    const { uu, uv, vv } = splits[split] as (typeof splits)[number];
    const informationAt = (onset: number): number => uu - 2 * onset * uv + onset * onset * vv;
    if (to > from && Math.min(informationAt(from), informationAt(to)) > 1e-12 * totalWeight) open.push(split);
  }
  return open;
}

function candidates({ times, splits }: ChangeSums, split: number): number[] {
  const [from, to] = [times[split - 1] as number, times[split] as number];
  const { uu, uv, vv, uy, vy } = splits[split] as (typeof splits)[number];
  const free = (uv * uy - uu * vy) / (uy * vv - vy * uv);
  return free > from && free < to ? [from, free, to] : [from, to];
}

function squaresAt({ splits, totalSquares, roundingSquares }: ChangeSums, split: number, onset: number): number {
  const { uu, uv, vv, uy, vy } = splits[split] as (typeof splits)[number];
  const along = uy - onset * vy;
  return Math.max(roundingSquares, totalSquares - (along * along) / (uu - 2 * onset * uv + onset * onset * vv));
}

function pointAt({ splits }: ChangeSums, split: number, onset: number, slack: number): RegionPoint {
  const { uu, uv, vv, uy, vy, meanU, meanV } = splits[split] as (typeof splits)[number];
  const information = uu - 2 * onset * uv + onset * onset * vv;
  return { onset, effect: (uy - onset * vy) / information, information, meanColumn: meanU - onset * meanV, slack };
}

/** The parts of a stretch between two loads in which the residual squares stay within `limit`. */
function within(sums: ChangeSums, split: number, limit: number): { readonly from: number; readonly to: number }[] {
  const [from, to] = [sums.times[split - 1] as number, sums.times[split] as number];
  const { uu, uv, vv, uy, vy } = sums.splits[split] as (typeof sums.splits)[number];
  const needed = sums.totalSquares - limit;
  // (uy − onset vy)² ≥ needed × information, both sides quadratic in the onset.
  const [a, b, c] = [vy * vy - needed * vv, uy * vy - needed * uv, uy * uy - needed * uu];
  const root = Math.sqrt(b * b - a * c);
  const cuts = [
    from,
    ...[(b - root) / a, (b + root) / a].filter((cut) => cut > from && cut < to).sort((p, q) => p - q),
    to,
  ];
  const parts: { from: number; to: number }[] = [];
  for (let at = 1; at < cuts.length; at += 1) {
    const part = { from: cuts[at - 1] as number, to: cuts[at] as number };
    const middle = (part.from + part.to) / 2;
    if (squaresAt(sums, split, middle) <= limit) parts.push(part);
  }
  return parts;
}
