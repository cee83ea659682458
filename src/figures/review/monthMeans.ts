import { monthsOn, startOfMonth } from "../../units/calendarMonth.ts";
import type { MeasuredBatch, MonthMeasure, MonthSpan } from "./monthMeasures.ts";

export interface MonthMean {
  /** Middle of the month. */
  readonly at: number;
  readonly value: number;
  readonly batches: number;
}

export function meanOf(batches: readonly MeasuredBatch[]): number | null {
  return batches.length === 0 ? null : batches.reduce((sum, { value }) => sum + value, 0) / batches.length;
}

/** Mean of each month that has batches, earliest first. */
export function monthMeans(
  batches: readonly MeasuredBatch[],
  { month }: MonthSpan,
  timeZone: string,
): readonly MonthMean[] {
  return Array.from({ length: 13 }, (_, i) => monthsOn(month, i - 12)).flatMap((name) => {
    const [from, to] = [startOfMonth(name, timeZone), startOfMonth(monthsOn(name, 1), timeZone)];
    const own = batches.filter(({ at }) => at >= from && at < to);
    const value = meanOf(own);
    return value === null ? [] : [{ at: (from + to) / 2, value, batches: own.length }];
  });
}

/** A measure's batches of the month, and of the twelve months before it. */
export function partedByMonth({ batches }: MonthMeasure, { monthFrom }: MonthSpan) {
  return {
    now: batches.filter(({ at }) => at >= monthFrom),
    before: batches.filter(({ at }) => at < monthFrom),
  };
}
