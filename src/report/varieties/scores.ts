import { dragOf, type Forecast, foretell, type Seen } from "../../analysis/consistency/consistency.ts";
import type { PairSums } from "../../analysis/consistency/pairSums.ts";
import {
  correlationFactor,
  type PooledCorrelation,
  pooledCorrelation,
} from "../../analysis/consistency/pooledCorrelation.ts";
import { type SquaresAboutMean, shrinkSpread } from "../../analysis/consistency/shrunkSpread.ts";
import { mean, sampleStandardDeviation } from "../../analysis/summary.ts";
import { wilsonInterval } from "../../analysis/wilsonInterval.ts";
import type { MeasureScore, ScoredBatch, ScoreStanding, Tolerance, VarietyScore } from "../varietiesResult.ts";
import type { Batch } from "./batches.ts";
import { FEWEST_BATCHES, type HeldMeasure, type ScoringGround, type VarietyGround } from "./ground.ts";

/** From this many batches on a score carries an interval. */
export const FEWEST_FOR_INTERVAL = 12;

export const seenOf = (sums: PairSums, { at }: HeldMeasure): Seen => ({
  count: sums.count(at),
  mean: sums.mean(at),
  squares: sums.squaresAboutMean(at),
});

/** Squares of column `at` about the means of all groups but one. */
export function othersOf(groups: readonly PairSums[], except: number, at: number): SquaresAboutMean {
  let [squares, degreesOfFreedom] = [0, 0];
  groups.forEach((group, place) => {
    const count = group.count(at);
    if (place === except || count < 2) return;
    squares += group.squaresAboutMean(at);
    degreesOfFreedom += count - 1;
  });
  return { squares, degreesOfFreedom };
}

/** One correlation for the house, from within its varieties. */
export function correlationOf(groups: readonly PairSums[]): PooledCorrelation {
  const spreads = groups.map((group, place) =>
    Float64Array.from({ length: group.columns }, (_, at) => {
      const count = group.count(at);
      if (count < 2) return 0;
      const own = { squares: group.squaresAboutMean(at), degreesOfFreedom: count - 1 };
      return Math.sqrt(shrinkSpread(own, othersOf(groups, place, at))?.variance ?? 0);
    }),
  );
  return pooledCorrelation(groups, (place, at) => spreads[place]?.[at] ?? 0);
}

const inside = (value: number, { low, high }: Tolerance): boolean =>
  (low === null || value >= low) && (high === null || value <= high);

/** Whether a batch met all of these; null where one of them was not recorded. */
export function metAll(batch: Batch, measures: readonly HeldMeasure[]): boolean | null {
  const values = measures.map(({ tolerance }) => batch.valueOf(tolerance.measure));
  if (values.some((value) => value === null)) return null;
  return measures.every(({ tolerance }, at) => inside(values[at] as number, tolerance));
}

function measureScore(
  ground: ScoringGround,
  { batches }: VarietyGround,
  { at, tolerance, limits }: HeldMeasure,
  { margin, onTarget, even }: Forecast["measures"][number],
  drag: number,
): MeasureScore {
  const values = batches.map((batch) => batch.valueOf(tolerance.measure)).filter((value) => value !== null);
  const met = values.filter((value) => inside(value, tolerance)).length;
  const scale = ground.scales[at];
  const spread = margin.scale / Math.sqrt(1 + 1 / values.length);
  const slope = scale?.slope(scale.from(margin.centre)) ?? 1;
  return {
    tolerance,
    scale: scale?.kind ?? "as it is",
    batches: values.length,
    mean: mean(values),
    ownSpread: values.length < 2 ? null : sampleStandardDeviation(values),
    spread: spread / slope,
    resolutionFloorUsed: limits.leastSpread > 0 && spread <= limits.leastSpread,
    onTarget,
    even,
    drag: 100 * drag,
    met,
    metShare: wilsonInterval(met, values.length),
  };
}

/** All scores of a view, without the intervals that follow (`scoreIntervals`). */
export function scoreVarieties(ground: ScoringGround): readonly VarietyScore[] {
  const groups = ground.varieties.map(({ sums }) => sums);
  const correlation = correlationOf(groups);
  const scores = ground.varieties.map((variety, place) => scoreVariety(ground, variety, place, groups, correlation));
  return scores.sort(
    (a, b) =>
      (a.onTarget?.estimate ?? Number.POSITIVE_INFINITY) - (b.onTarget?.estimate ?? Number.POSITIVE_INFINITY) ||
      (a.variety < b.variety ? -1 : 1),
  );
}

/** What is foretold of one variety over some measures; null where they are none or nothing says how they scatter. */
export function forecastOf(
  groups: readonly PairSums[],
  place: number,
  measures: readonly HeldMeasure[],
  correlation: PooledCorrelation,
  own: readonly Seen[] = measures.map((measure) => seenOf(groups[place] as PairSums, measure)),
): { readonly forecast: Forecast; readonly factor: Float64Array } | null {
  if (measures.length === 0) return null;
  const factor = correlationFactor(
    correlation,
    measures.map(({ at }) => at),
  );
  const others = measures.map(({ at }) => othersOf(groups, place, at));
  const forecast = foretell(
    own,
    others,
    measures.map(({ limits }) => limits),
    factor,
    509,
  );
  return forecast === null ? null : { forecast, factor };
}

function scoreVariety(
  ground: ScoringGround,
  variety: VarietyGround,
  place: number,
  groups: readonly PairSums[],
  correlation: PooledCorrelation,
): VarietyScore {
  const { counted, beside, batches } = variety;
  const outcomes = batches.map((batch) => metAll(batch, counted));
  const complete = counted.length === 0 ? 0 : outcomes.filter((outcome) => outcome !== null).length;
  const found = forecastOf(groups, place, counted, correlation);
  const standing: ScoreStanding =
    found === null || complete < FEWEST_BATCHES ? "none" : complete < FEWEST_FOR_INTERVAL ? "early" : "full";
  const drags =
    found === null
      ? []
      : dragOf(
          found.forecast,
          counted.map(({ limits }) => limits),
          found.factor,
          127,
        );
  const ordered = counted
    .map((held, at) => ({ held, drag: drags[at] ?? 0, own: found?.forecast.measures[at] }))
    .sort((a, b) => b.drag - a.drag || (a.held.at < b.held.at ? -1 : 1));
  const alone = beside.flatMap((held) => {
    const own = forecastOf(groups, place, [held], correlation)?.forecast.measures[0];
    return own === undefined ? [] : [measureScore(ground, variety, held, own, 0)];
  });
  const met = outcomes.filter((outcome) => outcome === true).length;
  const number = (share: number | undefined) =>
    standing === "none" || share === undefined ? null : { estimate: 100 * share, low: null, high: null };
  return {
    variety: variety.variety,
    grain: variety.grain,
    batches: complete,
    allBatches: batches.length,
    lots: new Set(batches.flatMap(({ row }) => (row.lot === null ? [] : [row.lot]))).size,
    standing,
    onTarget: number(found?.forecast.onTarget),
    even: number(found?.forecast.even),
    met,
    metShare: complete === 0 ? null : wilsonInterval(met, complete),
    measures: ordered.flatMap(({ held, drag, own }) =>
      own === undefined ? [] : [measureScore(ground, variety, held, own, drag)],
    ),
    beside: alone,
    notCounted: variety.notCounted,
    batchesInOrder: batches.map(
      (batch, at): ScoredBatch => ({
        run: batch.row.run,
        variety: batch.variety,
        lot: batch.row.lot,
        at: batch.at,
        values: ordered.map(({ held }) => batch.valueOf(held.tolerance.measure)),
        metAll: counted.length === 0 ? null : (outcomes[at] ?? null),
      }),
    ),
    noInterval: null,
    tooLittle: standing === "none" ? tooLittleFor(variety, complete) : null,
  };
}

function tooLittleFor({ counted, variety, batches }: VarietyGround, complete: number): string {
  if (batches.length < FEWEST_BATCHES) {
    return `${batches.length} ${batches.length === 1 ? "batch" : "batches"} of ${variety}; a score needs ${FEWEST_BATCHES}.`;
  }
  if (counted.length === 0) return `No measure of ${variety} has both a tolerance and values.`;
  return `${complete} ${complete === 1 ? "batch" : "batches"} of ${variety} with every measure that counts; a score needs ${FEWEST_BATCHES}.`;
}
