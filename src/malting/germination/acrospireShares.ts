import type { Interval } from "../../analysis/regressionFit.ts";
import { wilsonInterval } from "../../analysis/wilsonInterval.ts";
import { type AcrospireCounts, acrospireCounted } from "../acrospire.ts";

/** Shares of one count, per cent of the kernels counted, each with Wilson's interval. The three make up the whole. */
export interface AcrospireShares {
  /** Half the kernel's length or less, none included. */
  readonly undergrownPercent: Interval;
  /** From half to full length. */
  readonly evenPercent: Interval;
  /** Beyond the kernel's own length. */
  readonly overgrownPercent: Interval;
}

/**
 * Undergrown, even and overgrown kernels. 10 overgrown of 100 are 10 %, from 5.5 to 17.4: a change of two or three points
 * between two such counts says nothing.
 *
 * @returns null when nothing was counted
 * @throws {RangeError} when a count is negative or not a whole number
 */
export function acrospireShares(counts: AcrospireCounts, level = 0.95): AcrospireShares | null {
  const counted = acrospireCounted(counts);
  if (counted === 0) return null;
  const share = (kernels: number): Interval => {
    const { estimate, low, high } = wilsonInterval(kernels, counted, level);
    return { estimate: 100 * estimate, low: 100 * low, high: 100 * high };
  };
  return {
    undergrownPercent: share(counts.none + counts.toQuarter + counts.toHalf),
    evenPercent: share(counts.toThreeQuarters + counts.toFull),
    overgrownPercent: share(counts.over),
  };
}

/** The kernels of several counts as one. */
export function addedCounts(all: readonly AcrospireCounts[]): AcrospireCounts {
  const sum = { none: 0, toQuarter: 0, toHalf: 0, toThreeQuarters: 0, toFull: 0, over: 0 };
  for (const counts of all) {
    for (const name of Object.keys(sum) as (keyof AcrospireCounts)[]) sum[name] += counts[name];
  }
  return sum;
}
