import { type ChartSeries, requireSeries, tieTolerance } from "./chartSeries.ts";
import { type Signal, signalSize } from "./signal.ts";

/** The exponentially weighted moving average (EWMA) of deviations from the centre, in the measure's unit. */
export interface Ewma {
  readonly means: Float64Array;
  /** Half-width of the limits at each run: the limits are ± this. */
  readonly reach: Float64Array;
  readonly signals: readonly Signal[];
}

/**
 * Running weighted mean zᵢ = λ xᵢ + (1 − λ) zᵢ₋₁ of deviations from the centre, from z₀ = 0, with limits ± L times its
 * own standard deviation. That follows from the same recursion, var(zᵢ) = λ² σᵢ² + (1 − λ)² var(zᵢ₋₁), which is
 * σ² λ/(2 − λ) (1 − (1 − λ)²ⁱ) where sigma stays the same (e-Handbook 6.3.2.4): narrow at first, then level. With
 * `steady` limits are level from the start, as the handbook's example draws them.
 *
 * The default, weight 0.10 and limit 2.814, is the design of Lucas and Saccucci (1990, Technometrics 32, 1–12; read in
 * a secondary copy) for an average of 500 runs between false signals with steady limits.
 *
 * A signal runs from the first run after the mean last stood on the other side of the centre (Nishina 1992, Quality and
 * Reliability Engineering International 8, 537–543; from memory) to the run at which the values, less half the shift
 * seen when it was raised, have added up to most: the weighted mean itself stays high long after a fault is mended.
 *
 * @throws RangeError for a weight outside 0 to 1, a limit that is not positive, or a broken series
 */
export function ewma(
  series: ChartSeries,
  options: { readonly weight?: number; readonly limit?: number; readonly steady?: boolean } = {},
): Ewma {
  const { weight = 0.1, limit = 2.814, steady = false } = options;
  requireSeries(series, "ewma");
  if (!(weight > 0 && weight <= 1)) throw new RangeError(`ewma requires a weight above 0 and up to 1; got ${weight}`);
  if (!(limit > 0)) throw new RangeError(`ewma requires a positive limit; got ${limit}`);
  const { deviations, sigmas } = series;
  const count = deviations.length;
  const means = new Float64Array(count);
  const reach = new Float64Array(count);
  let mean = 0;
  let variance = 0;
  for (let at = 0; at < count; at += 1) {
    const own = (sigmas[at] as number) ** 2;
    mean += weight * ((deviations[at] as number) - mean);
    variance = steady ? (own * weight) / (2 - weight) : weight * weight * own + (1 - weight) ** 2 * variance;
    means[at] = mean;
    reach[at] = limit * Math.sqrt(variance);
  }
  return { means, reach, signals: excursions(deviations, means, reach) };
}

function excursions(deviations: ArrayLike<number>, means: Float64Array, reach: Float64Array): Signal[] {
  const signals: Signal[] = [];
  let crossed = 0;
  for (let at = 0; at < means.length; at += 1) {
    const mean = means[at] as number;
    if (at > 0 && mean > 0 !== (means[at - 1] as number) > 0) crossed = at;
    if (Math.abs(mean) <= (reach[at] as number) * (1 + tieTolerance)) continue;
    const side = mean > 0 ? 1 : -1;
    const direction = side > 0 ? "above" : "below";
    let last = at;
    // Back inside and out again on the same side, without reaching the centre between, is still the same excursion.
    for (let ahead = at + 1; ahead < means.length && side * (means[ahead] as number) > 0; ahead += 1) {
      if (side * (means[ahead] as number) > (reach[ahead] as number) * (1 + tieTolerance)) last = ahead;
    }
    const half = (side * signalSize(deviations, { from: crossed, to: at, direction })) / 2;
    let to = at;
    let sum = 0;
    let most = 0;
    for (let ahead = at + 1; ahead <= last; ahead += 1) {
      sum += side * (deviations[ahead] as number) - half;
      if (sum > most) {
        most = sum;
        to = ahead;
      }
    }
    const size = signalSize(deviations, { from: crossed, to, direction });
    signals.push({ rule: "weightedMean", from: crossed, to, raisedAt: at, size, direction });
    at = last;
  }
  return signals;
}
