import { dragOf, foretell, type MeasureForecast } from "../../analysis/consistency/consistency.ts";
import type { PooledCorrelation } from "../../analysis/consistency/pooledCorrelation.ts";
import { mean, sampleStandardDeviation } from "../../analysis/summary.ts";
import { wilsonInterval } from "../../analysis/wilsonInterval.ts";
import type { MeasureScore, ScoredBatch, ScoreNumber, ScoreStanding, VarietyScore } from "../varietiesResult.ts";
import { FEWEST_BATCHES, type HeldMeasure, inside, type ScoringGround, type VarietyGround } from "./ground.ts";
import { correlationOf, forecastGround, othersOf, seenOf } from "./judged.ts";

/** From this many batches on a score carries an interval. */
const FEWEST_FOR_INTERVAL = 12;
/** Fewer lots than this, drawn anew, do not show how far lots scatter. */
const FEWEST_LOTS_FOR_INTERVAL = 4;

function measureScore(
  { batches }: VarietyGround,
  { tolerance, limits, scale }: HeldMeasure,
  { margin, onTarget, even }: MeasureForecast,
  drag: number,
): MeasureScore {
  const values = batches.map((batch) => batch.valueOf(tolerance.measure)).filter((value) => value !== null);
  const met = values.filter((value) => inside(value, tolerance)).length;
  const spread = margin.scale / Math.sqrt(1 + 1 / values.length);
  return {
    tolerance,
    scale: scale.kind,
    limits,
    batches: values.length,
    mean: mean(values),
    ownSpread: values.length < 2 ? null : sampleStandardDeviation(values),
    spread: spread / scale.slope(scale.from(margin.centre)),
    resolutionFloorUsed: limits.leastSpread > 0 && spread <= limits.leastSpread,
    onTarget,
    even,
    drag: 100 * drag,
    met,
    metShare: wilsonInterval(met, values.length),
  };
}

/** All scores of a view, lowest *on target* first, without the intervals that follow (`followVarieties`). */
export function scoreVarieties({ varieties }: ScoringGround): readonly VarietyScore[] {
  const correlation = correlationOf(varieties.map(({ sums }) => sums));
  const scores = varieties.map((variety, place) => scoreVariety(variety, place, varieties, correlation));
  const last = Number.POSITIVE_INFINITY;
  return scores.sort(
    (a, b) => (a.onTarget?.estimate ?? last) - (b.onTarget?.estimate ?? last) || (a.variety < b.variety ? -1 : 1),
  );
}

/** A measure that does not count has its own chance all the same. */
function besideScores(variety: VarietyGround, place: number, all: readonly VarietyGround[]): readonly MeasureScore[] {
  const groups = all.map(({ sumsOfAll }) => sumsOfAll);
  return variety.beside.flatMap((held) => {
    const seen = [seenOf(variety.sumsOfAll, held.at)];
    const forecast = foretell(seen, [othersOf(groups, place, held.at)], [held.limits], [1], 67)?.measures[0];
    return forecast === undefined ? [] : [measureScore(variety, held, forecast, 0)];
  });
}

function scoreVariety(
  variety: VarietyGround,
  place: number,
  all: readonly VarietyGround[],
  correlation: PooledCorrelation,
): VarietyScore {
  const { counted, batches, judged, sums } = variety;
  const groups = all.map((group) => group.sums);
  const complete = judged.filter(({ met }) => met !== null).length;
  const { others, limits, factor } = forecastGround(groups, place, counted, correlation);
  const seen = counted.map(({ at }) => seenOf(sums, at));
  const found = counted.length === 0 ? null : foretell(seen, others, limits, factor, 509);
  const standing: ScoreStanding =
    found === null || complete < FEWEST_BATCHES ? "none" : complete < FEWEST_FOR_INTERVAL ? "early" : "full";
  const drags = found === null ? [] : dragOf(found, limits, factor, 127);
  const ordered = counted
    .map((held, at) => ({ held, drag: drags[at] ?? 0, own: found?.measures[at] }))
    .sort((a, b) => b.drag - a.drag || a.held.at - b.held.at);
  const lots = new Set(judged.flatMap(({ lot }) => (lot === null ? [] : [lot]))).size;
  const met = judged.filter((batch) => batch.met === true).length;
  const number = (share: number | undefined): ScoreNumber | null =>
    standing === "none" || share === undefined ? null : { estimate: 100 * share, low: null, high: null };
  return {
    variety: variety.variety,
    grain: variety.grain,
    batches: complete,
    allBatches: batches.length,
    lots,
    standing,
    onTarget: number(found?.onTarget),
    even: number(found?.even),
    met,
    metShare: complete === 0 ? null : wilsonInterval(met, complete),
    measures: ordered.flatMap(({ held, drag, own }) =>
      own === undefined ? [] : [measureScore(variety, held, own, drag)],
    ),
    beside: besideScores(variety, place, all),
    notCounted: variety.notCounted,
    batchesInOrder: batches.map(
      (batch, at): ScoredBatch => ({
        run: batch.row.run,
        variety: batch.variety,
        lot: batch.row.lot,
        at: batch.at,
        values: ordered.flatMap(({ held, own }) => (own === undefined ? [] : [batch.valueOf(held.tolerance.measure)])),
        metAll: judged[at]?.met ?? null,
      }),
    ),
    // A batch without a lot stands for itself.
    noInterval: standing === "full" ? fewLots(lots + judged.filter(({ lot }) => lot === null).length) : null,
    tooLittle: standing === "none" ? tooLittleFor(variety, complete) : null,
  };
}

function fewLots(lots: number): string | null {
  if (lots >= FEWEST_LOTS_FOR_INTERVAL) return null;
  return `Its batches came from ${lots} ${lots === 1 ? "lot" : "lots"}; an interval needs ${FEWEST_LOTS_FOR_INTERVAL}.`;
}

function tooLittleFor({ counted, variety, batches }: VarietyGround, complete: number): string {
  const counting = (count: number): string => `${count} ${count === 1 ? "batch" : "batches"} of ${variety}`;
  if (batches.length < FEWEST_BATCHES) return `${counting(batches.length)}; a score needs ${FEWEST_BATCHES}.`;
  if (counted.length === 0) return `No measure of ${variety} has both a tolerance and values.`;
  return `${counting(complete)} with every measure that counts; a score needs ${FEWEST_BATCHES}.`;
}
