import { type ChartSeries, requireSeries, tieTolerance } from "./chartSeries.ts";
import { type Signal, signalSize } from "./signal.ts";

/** Two-sided tabular cumulative sums (CUSUM), in sigma. */
export interface Cusum {
  /** Sum of what lies above the centre by more than the reference; 0 or more. */
  readonly upper: Float64Array;
  /** The same below the centre; 0 or more. */
  readonly lower: Float64Array;
  readonly decision: number;
  readonly signals: readonly Signal[];
}

/**
 * Tabular cumulative sums of standardised deviations y: upper Sᵢ = max(0, Sᵢ₋₁ + yᵢ − k), lower Sᵢ = max(0, Sᵢ₋₁ − yᵢ − k),
 * each signalling above h (e-Handbook 6.3.2.3). The sums run on after a signal; nothing is reset.
 *
 * The default, k 0.5 and h 4.77, looks for shifts of one sigma and gives about 370 runs between false signals (Hawkins
 * 1993, Journal of Quality Technology 25, 248–256; from memory, recomputed).
 *
 * A signal starts with the first run after its sum last stood at 0, the usual estimate of when the shift began, and
 * ends where the sum stands highest before it is back at 0; its size is the mean deviation over those runs, which is k
 * plus the sum over its number of runs (Montgomery, Introduction to Statistical Quality Control, chapter 9; from memory).
 * Both are estimates made by looking for the most: sizes come out too large on average, more so where the signal is young.
 *
 * @throws RangeError for a negative reference, a decision that is not positive, or a broken series
 */
export function cusum(
  series: ChartSeries,
  options: { readonly reference?: number; readonly decision?: number } = {},
): Cusum {
  const { reference = 0.5, decision = 4.77 } = options;
  requireSeries(series, "cusum");
  if (!(reference >= 0)) throw new RangeError(`cusum requires a reference of 0 or more; got ${reference}`);
  if (!(decision > 0)) throw new RangeError(`cusum requires a positive decision; got ${decision}`);
  const upper = sums(series, 1, reference);
  const lower = sums(series, -1, reference);
  const signals = [
    ...excursions(series.deviations, upper, decision, "above"),
    ...excursions(series.deviations, lower, decision, "below"),
  ].sort((a, b) => a.raisedAt - b.raisedAt);
  return { upper, lower, decision, signals };
}

function sums({ deviations, sigmas }: ChartSeries, side: 1 | -1, reference: number): Float64Array {
  const result = new Float64Array(deviations.length);
  let sum = 0;
  for (let at = 0; at < result.length; at += 1) {
    sum = Math.max(0, sum + (side * (deviations[at] as number)) / (sigmas[at] as number) - reference);
    result[at] = sum;
  }
  return result;
}

function excursions(
  deviations: ArrayLike<number>,
  sum: Float64Array,
  decision: number,
  direction: "above" | "below",
): Signal[] {
  const signals: Signal[] = [];
  let from = 0;
  for (let at = 0; at < sum.length; at += 1) {
    if (sum[at] === 0) from = at + 1;
    if ((sum[at] as number) <= decision + tieTolerance) continue;
    let to = at;
    let ahead = at;
    for (; ahead < sum.length && (sum[ahead] as number) > 0; ahead += 1) {
      if ((sum[ahead] as number) > (sum[to] as number)) to = ahead;
    }
    const size = signalSize(deviations, { from, to, direction });
    signals.push({ rule: "cumulativeSum", from, to, raisedAt: at, size, direction });
    from = ahead + 1;
    at = ahead;
  }
  return signals;
}
