import { twoSample } from "../../analysis/beforeAfter/twoSample.ts";
import { spreadRatio } from "../../analysis/spreadRatio.ts";
import { mean, sampleStandardDeviation } from "../../analysis/summary.ts";
import { localParts, printMonth } from "../../units/instant.ts";
import type { PeriodComparison } from "../varietiesResult.ts";
import type { ScoringGround } from "./ground.ts";

/** A variety is compared where each quarter of the year holds this many of its batches with the measure. */
const FEWEST_EACH = 3;
const MONTHS = 3;

/** Quarters of years counted from year 0. */
function quarterOf(moment: number, timeZone: string): number {
  const { year, month } = localParts(moment, timeZone);
  return year * 4 + Math.floor((month - 1) / MONTHS);
}

/** `July to September 2026`. */
function quarterName(quarter: number): string {
  const year = Math.floor(quarter / 4);
  const first = (quarter % 4) * MONTHS + 1;
  const month = (number: number): string => printMonth(`${year}-${number}`);
  return `${month(first).split(" ")[0]} to ${month(first + MONTHS - 1)}`;
}

/**
 * The last quarter of a year that is full against the one before it, each variety by each measure that counts. A quarter is
 * full when batches of a later one have come, or `until` lies in a later one.
 *
 * @param until the latest moment that the logs speak of
 */
export function comparePeriods(
  { varieties }: ScoringGround,
  until: number,
  timeZone: string,
): readonly PeriodComparison[] {
  const last = quarterOf(until, timeZone) - 1;
  const describe = (quarter: number, values: readonly number[]) => ({
    name: quarterName(quarter),
    batches: values.length,
    mean: mean(values),
    spread: sampleStandardDeviation(values),
  });
  return varieties.flatMap(({ variety, batches, counted }) => {
    const quarters = batches.map(({ at }) => quarterOf(at, timeZone));
    return counted.flatMap(({ tolerance: { measure } }): PeriodComparison[] => {
      const of = (quarter: number): number[] =>
        batches.flatMap((batch, at) => (quarters[at] === quarter ? (batch.valueOf(measure) ?? []) : []));
      const [before, now] = [of(last - 1), of(last)];
      if (before.length < FEWEST_EACH || now.length < FEWEST_EACH) return [];
      const ratio = spreadRatio(now, before);
      if (ratio === null || ratio.estimate === 0) return [];
      const { estimate, low, high } = twoSample(before, now);
      return [
        {
          variety,
          measure,
          now: describe(last, now),
          before: describe(last - 1, before),
          difference: { estimate, low, high },
          spreadRatio: ratio,
        },
      ];
    });
  });
}
