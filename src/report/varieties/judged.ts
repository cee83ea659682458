import type { ScaledLimits, Seen } from "../../analysis/consistency/consistency.ts";
import { PairSums } from "../../analysis/consistency/pairSums.ts";
import {
  correlationFactor,
  type PooledCorrelation,
  pooledCorrelation,
} from "../../analysis/consistency/pooledCorrelation.ts";
import { type SquaresAboutMean, shrinkSpread } from "../../analysis/consistency/shrunkSpread.ts";
import type { VarietyScore } from "../varietiesResult.ts";
import { scaleOf } from "./measureScales.ts";

/** A measure that counts for a variety. */
export interface JudgedMeasure {
  /** Place among the house's measures. */
  readonly at: number;
  readonly limits: ScaledLimits;
}

export interface JudgedBatch {
  readonly run: string;
  readonly lot: string | null;
  readonly at: number;
  /** On the measures' scales, one column a measure of the house; NaN where not recorded or where it does not count. */
  readonly row: Float64Array;
  /** Every tolerance met; null where a measure that counts was not recorded. */
  readonly met: boolean | null;
}

/** A variety as the forecasts see it. */
export interface JudgedVariety {
  readonly variety: string;
  readonly batches: readonly JudgedBatch[];
  readonly sums: PairSums;
  readonly counted: readonly JudgedMeasure[];
}

/** The sums of a variety's batches. */
export function sumsOf(columns: number, batches: readonly JudgedBatch[]): PairSums {
  const sums = new PairSums(columns);
  for (const { row } of batches) sums.add(row);
  return sums;
}

/** The scores taken back to what they were made from, by the varieties' names. */
export function judgedVarieties(scores: readonly VarietyScore[]): readonly JudgedVariety[] {
  const names = scores.flatMap(({ measures }) => measures.map(({ tolerance }) => tolerance.measure));
  const house = [...new Set(names)].sort();
  const judged = scores.map(({ variety, measures, batchesInOrder }): JudgedVariety => {
    const places = measures.map(({ tolerance }) => house.indexOf(tolerance.measure));
    const scales = measures.map(({ tolerance }) => scaleOf(tolerance.measure));
    const batches = batchesInOrder.map(({ run, lot, at, values, metAll: met }): JudgedBatch => {
      const row = new Float64Array(house.length).fill(Number.NaN);
      values.forEach((value, index) => {
        if (value !== null) row[places[index] as number] = scales[index]?.to(value) ?? Number.NaN;
      });
      return { run, lot, at, row, met };
    });
    const counted = measures.map(({ limits }, index) => ({ at: places[index] as number, limits }));
    return { variety, batches, sums: sumsOf(house.length, batches), counted };
  });
  return judged.sort((a, b) => (a.variety < b.variety ? -1 : 1));
}

export const seenOf = (sums: PairSums, at: number): Seen => ({
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

/** What a forecast of one variety stands on besides what was seen of it. */
export interface ForecastGround {
  readonly others: readonly SquaresAboutMean[];
  readonly limits: readonly ScaledLimits[];
  readonly factor: Float64Array;
}

export function forecastGround(
  groups: readonly PairSums[],
  place: number,
  counted: readonly JudgedMeasure[],
  correlation: PooledCorrelation,
): ForecastGround {
  const places = counted.map(({ at }) => at);
  return {
    others: places.map((at) => othersOf(groups, place, at)),
    limits: counted.map(({ limits }) => limits),
    factor: correlationFactor(correlation, places),
  };
}
