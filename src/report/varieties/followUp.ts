import { allSteps } from "../../analysis/allSteps.ts";
import { foretell } from "../../analysis/consistency/consistency.ts";
import { drawLots } from "../../analysis/consistency/lotBootstrap.ts";
import type { VarietiesResult, VarietyScore } from "../varietiesResult.ts";
import { type BackTests, backTest } from "./backTest.ts";
import {
  correlationOf,
  forecastGround,
  type JudgedBatch,
  type JudgedVariety,
  judgedVarieties,
  seenOf,
  sumsOf,
} from "./judged.ts";

/** Intervals of a variety's two numbers, in 100. */
export interface ScoreIntervals {
  readonly variety: string;
  readonly onTarget: readonly [low: number, high: number];
  readonly even: readonly [low: number, high: number];
}

/** What takes longer than all scores together and so comes after them: intervals by resampling, and the back-tests. */
export interface VarietiesFollowUp {
  /** Of the scores that carry one. */
  readonly intervals: readonly ScoreIntervals[];
  readonly backTests: BackTests;
}

/** The batches lot by lot; a batch without a lot stands for itself. */
function byLot({ batches }: JudgedVariety): readonly (readonly JudgedBatch[])[] {
  const lots = new Map<string, JudgedBatch[]>();
  for (const batch of batches) {
    const key = batch.lot === null ? `run ${batch.run}` : `lot ${batch.lot}`;
    const own = lots.get(key);
    if (own) own.push(batch);
    else lots.set(key, [batch]);
  }
  return [...lots.values()];
}

/** A few milliseconds a step, so that a worker can hear of a newer wish meanwhile. */
export function* followVarieties({ scores }: VarietiesResult): Generator<void, VarietiesFollowUp> {
  const varieties = judgedVarieties(scores);
  const intervals = yield* drawIntervals(scores, varieties);
  return { intervals, backTests: yield* backTest(varieties) };
}

interface DrawOptions {
  readonly draws?: number;
  /** Which of the scores to draw an interval for. */
  readonly of?: (score: VarietyScore) => boolean;
}

function* drawIntervals(
  scores: readonly VarietyScore[],
  varieties: readonly JudgedVariety[],
  { draws, of = () => true }: DrawOptions = {},
): Generator<void, readonly ScoreIntervals[]> {
  const groups = varieties.map(({ sums }) => sums);
  const correlation = correlationOf(groups);
  const intervals: ScoreIntervals[] = [];
  for (const [place, variety] of varieties.entries()) {
    const score = scores.find((candidate) => candidate.variety === variety.variety);
    if (score?.standing !== "full" || score.noInterval !== null || !of(score)) continue;
    const { counted, sums } = variety;
    const { others, limits, factor } = forecastGround(groups, place, counted, correlation);
    const places = counted.map(({ at }) => at);
    const lots = byLot(variety).map((batches) => {
      const own = sumsOf(sums.columns, batches);
      return places.map((at) => seenOf(own, at));
    });
    // On as few lattice points as the draws, so that they differ by the lots alone.
    const whole = foretell(
      places.map((at) => seenOf(sums, at)),
      others,
      limits,
      factor,
      67,
    );
    if (whole === null) continue;
    const drawn = yield* drawLots(lots, others, limits, factor, whole, draws);
    if (drawn === null) continue;
    const around = ({ low, high }: { low: number; high: number }, estimate: number): readonly [number, number] => [
      Math.min(estimate, 100 * low),
      Math.max(estimate, 100 * high),
    ];
    intervals.push({
      variety: variety.variety,
      onTarget: around(drawn.onTarget, score.onTarget?.estimate ?? 100 * whole.onTarget),
      even: around(drawn.even, score.even?.estimate ?? 100 * whole.even),
    });
  }
  return intervals;
}

/** Enough to tell whether one variety is surely lower than another, month after month. */
const FEWER_DRAWS = 79;

/**
 * The scores with rougher intervals, and nothing else of what follows: for a month's review, of which there are many. Only the
 * best gets one, and those that lie below its lower end: no other can be surely lower than it.
 */
export function withIntervals(result: VarietiesResult): VarietiesResult {
  const { scores } = result;
  const varieties = judgedVarieties(scores);
  const estimateOf = ({ onTarget }: VarietyScore): number => onTarget?.estimate ?? Number.NEGATIVE_INFINITY;
  const [best] = scores
    .filter(({ standing, noInterval }) => standing === "full" && noInterval === null)
    .toSorted((a, b) => estimateOf(b) - estimateOf(a));
  if (best === undefined || scores.length < 2) return result;
  const ofBest = allSteps(drawIntervals(scores, varieties, { draws: FEWER_DRAWS, of: (score) => score === best }));
  const lowest = ofBest[0]?.onTarget[0] ?? Number.NEGATIVE_INFINITY;
  const of = (score: VarietyScore): boolean => score !== best && estimateOf(score) < lowest;
  const others = allSteps(drawIntervals(scores, varieties, { draws: FEWER_DRAWS, of }));
  return { ...result, scores: scoresWith(scores, [...ofBest, ...others]) };
}

const scoresWith = (scores: readonly VarietyScore[], intervals: readonly ScoreIntervals[]): readonly VarietyScore[] =>
  scores.map((score) => {
    const found = intervals.find(({ variety }) => variety === score.variety);
    if (found === undefined || score.onTarget === null || score.even === null) return score;
    return {
      ...score,
      onTarget: { ...score.onTarget, low: found.onTarget[0], high: found.onTarget[1] },
      even: { ...score.even, low: found.even[0], high: found.even[1] },
    };
  });

/** The result with what followed. */
export function withVarietiesFollowUp(
  result: VarietiesResult,
  { intervals, backTests }: VarietiesFollowUp,
): VarietiesResult {
  return {
    ...result,
    scores: scoresWith(result.scores, intervals),
    backTest: backTests.onTarget,
    backTestOfEven: backTests.even,
    followed: true,
  };
}
