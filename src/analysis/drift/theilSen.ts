import { normalQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { median } from "../summary.ts";
import { requireTimeOrder } from "./driftSeries.ts";
import { mannKendall } from "./mannKendall.ts";

/** A slope that odd loads hardly move. */
export interface TheilSen {
  /** In the value's unit a day. */
  readonly slopePerDay: Interval;
  /** Median of value − slope × day: where the line stands at day 0 of the caller's count. */
  readonly intercept: number;
  readonly loads: number;
}

/**
 * Median of the slopes of all pairs of loads from day `from` on (Theil 1950; Sen 1968, Journal of the American
 * Statistical Association 63, 1379–1389; from memory). Use it only on what follows an onset: over a stretch that was flat
 * first it gives a slope that nothing had. For a drift it stands beside the least-squares slope, to show that no odd load made it.
 *
 * The interval is Sen's, the ordered slopes of ranks (N ∓ z √var S)/2, taken outwards to whole ranks, with var S that of
 * `mannKendall`.
 *
 * @returns null for fewer than four loads from there on, or loads of one day
 * @throws RangeError for a broken series or a level outside 0 to 1
 */
export function theilSen(
  days: ArrayLike<number>,
  values: ArrayLike<number>,
  options: { readonly from?: number; readonly level?: number } = {},
): TheilSen | null {
  requireTimeOrder(days, values, "theilSen");
  const { from = Number.NEGATIVE_INFINITY, level = 0.95 } = options;
  if (!(level > 0 && level < 1)) throw new RangeError(`theilSen requires a level between 0 and 1; got ${level}`);
  const first = Array.from(days).findIndex((day) => day >= from);
  if (first < 0) return null;
  const t = Float64Array.from(days).subarray(first);
  const y = Float64Array.from(values).subarray(first);
  const trend = mannKendall(t, y);
  const slopes = pairSlopes(t, y);
  if (trend === null || slopes.length === 0) return null;
  const reach = normalQuantile(0.5 + level / 2) * Math.sqrt(trend.variance);
  const last = slopes.length - 1;
  const low = Math.max(0, Math.floor((slopes.length - reach) / 2) - 1);
  const high = Math.min(last, Math.ceil((slopes.length + reach) / 2));
  const estimate = ((slopes[Math.floor(last / 2)] as number) + (slopes[Math.ceil(last / 2)] as number)) / 2;
  return {
    slopePerDay: { estimate, low: slopes[low] as number, high: slopes[high] as number },
    intercept: median(y.map((value, at) => value - estimate * (t[at] as number))),
    loads: y.length,
  };
}

function pairSlopes(t: Float64Array, y: Float64Array): Float64Array {
  const slopes = new Float64Array((t.length * (t.length - 1)) / 2);
  let filled = 0;
  for (let later = 1; later < t.length; later += 1) {
    for (let earlier = 0; earlier < later; earlier += 1) {
      const apart = (t[later] as number) - (t[earlier] as number);
      if (apart === 0) continue;
      slopes[filled] = ((y[later] as number) - (y[earlier] as number)) / apart;
      filled += 1;
    }
  }
  return slopes.subarray(0, filled).sort();
}
