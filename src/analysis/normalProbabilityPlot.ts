import { normalQuantile } from "./distributions.ts";
import { mean } from "./summary.ts";

/** Ordered values against where a normal sample's would lie; straight where they are normal. */
export interface NormalProbabilityPlot {
  /** Ascending. */
  readonly values: Float64Array;
  /** Standard normal quantiles of the plotting positions, ascending. */
  readonly quantiles: Float64Array;
  /** For each ordered value, its index among those given. */
  readonly indices: readonly number[];
  /** Correlation of the two; 1 is a straight line. Null where the values do not vary. */
  readonly correlation: number | null;
}

/**
 * Coordinates of a normal probability plot with Filliben's plotting positions, the medians of ordered uniform values:
 * 1 − 0.5^(1/n), (i − 0.3175)/(n + 0.365), 0.5^(1/n) (e-Handbook 1.3.3.21; Filliben 1975, Technometrics 17, 111–117;
 * from memory). Equal values keep the order that they came in.
 *
 * @throws RangeError for fewer than three values
 */
export function normalProbabilityPlot(values: ArrayLike<number>): NormalProbabilityPlot {
  const n = values.length;
  if (n < 3) throw new RangeError(`normalProbabilityPlot requires at least three values; got ${n}`);
  const indices = Array.from({ length: n }, (_, at) => at).sort(
    (a, b) => (values[a] as number) - (values[b] as number) || a - b,
  );
  const ordered = Float64Array.from(indices, (at) => values[at] as number);
  const quantiles = Float64Array.from(indices, (_, place) => normalQuantile(plottingPosition(place + 1, n)));
  return { values: ordered, quantiles, indices, correlation: correlationOf(ordered, quantiles) };
}

function plottingPosition(i: number, n: number): number {
  if (i === 1) return 1 - 0.5 ** (1 / n);
  if (i === n) return 0.5 ** (1 / n);
  return (i - 0.3175) / (n + 0.365);
}

function correlationOf(a: Float64Array, b: Float64Array): number | null {
  const meanA = mean(a);
  const meanB = mean(b);
  let squaresA = 0;
  let squaresB = 0;
  let products = 0;
  for (let i = 0; i < a.length; i += 1) {
    const da = (a[i] as number) - meanA;
    const db = (b[i] as number) - meanB;
    squaresA += da * da;
    squaresB += db * db;
    products += da * db;
  }
  return squaresA === 0 ? null : products / Math.sqrt(squaresA * squaresB);
}
