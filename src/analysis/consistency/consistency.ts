import { studentTCdf, studentTQuantile } from "../distributions.ts";
import { boxProbability } from "./boxProbability.ts";
import type { LatticeSize } from "./latticePoints.ts";
import { chanceFromTails, type PredictiveMargin, predictiveMargin, standardised } from "./predictiveMargin.ts";
import { type SquaresAboutMean, shrinkSpread } from "./shrunkSpread.ts";

/** What has been seen of one measure of one variety, on the measure's scale. */
export interface Seen {
  readonly count: number;
  readonly mean: number;
  /** Σ(x − x̄)². */
  readonly squares: number;
}

/** What one measure is accepted by, on its scale; an infinite number where there is no limit. */
export interface ScaledLimits {
  readonly low: number;
  readonly high: number;
  /** How far below and above its own centre a value may lie and still count as even. */
  readonly below: number;
  readonly above: number;
  /** What the meter's step alone would scatter. */
  readonly leastSpread: number;
}

export interface MeasureForecast {
  readonly margin: PredictiveMargin;
  readonly onTarget: number;
  readonly even: number;
}

export interface Forecast {
  /** Chances from 0 to 1 that the next batch keeps all limits, and all of them about the own centres. */
  readonly onTarget: number;
  readonly even: number;
  readonly measures: readonly MeasureForecast[];
}

/** Limits as a box for {@link boxProbability}, all margins brought to one number of degrees of freedom. */
interface Box {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** The value that cuts off the same tail of a Student t with `to` degrees of freedom as `value` does of one with `from`. */
function sameTail(value: number, tail: number, from: number, to: number): number {
  if (from === to || !Number.isFinite(value) || value === 0) return value;
  if (tail === 0) return value > 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  return tail >= 0.5 ? 0 : -Math.sign(value) * studentTQuantile(tail, to);
}

/**
 * Foretells a variety's next batch. Each measure has a Student t margin from its own mean and a spread shrunk to that of
 * the other varieties (`shrinkSpread`); the margins are joined as a multivariate t, whose degrees of freedom are the
 * fewest of any margin, by one correlation. Margins keep their own degrees of freedom (a t copula: Demarta and McNeil
 * 2005, International Statistical Review 73, 111–129; from memory).
 *
 * @param others squares of the other varieties about their means, measure by measure
 * @param factor lower triangle of the correlation, row-major
 * @returns null where nothing says how far a measure scatters
 */
export function foretell(
  seen: readonly Seen[],
  others: readonly SquaresAboutMean[],
  limits: readonly ScaledLimits[],
  factor: ArrayLike<number>,
  size: LatticeSize,
): Forecast | null {
  const margins: PredictiveMargin[] = [];
  for (const [at, { count, mean, squares }] of seen.entries()) {
    if (count === 0) return null;
    const spread = shrinkSpread({ squares, degreesOfFreedom: count - 1 }, others[at] as SquaresAboutMean);
    if (spread === null) return null;
    margins.push(predictiveMargin(count, mean, spread, limits[at]?.leastSpread));
  }
  const degreesOfFreedom = Math.min(...margins.map((margin) => margin.degreesOfFreedom));
  const target = emptyBox(margins.length);
  const centre = emptyBox(margins.length);
  const measures = margins.map((margin, at): MeasureForecast => {
    const { low, high, below, above } = limits[at] as ScaledLimits;
    const onTarget = put(target, at, margin, low, high, degreesOfFreedom);
    const even = put(centre, at, margin, margin.centre - below, margin.centre + above, degreesOfFreedom);
    return { margin, onTarget, even };
  });
  const joint = (box: Box): number => boxProbability(box.low, box.high, factor, degreesOfFreedom, size);
  return { onTarget: joint(target), even: joint(centre), measures };
}

/**
 * By how much the chance would rise if a measure always kept its limits, one number a measure.
 *
 * @param forecast as {@link foretell} gives it for these limits
 */
export function dragOf(
  { measures }: Forecast,
  limits: readonly ScaledLimits[],
  factor: ArrayLike<number>,
  size: LatticeSize,
): number[] {
  const degreesOfFreedom = Math.min(...measures.map(({ margin }) => margin.degreesOfFreedom));
  const box = emptyBox(measures.length);
  measures.forEach(({ margin }, at) => {
    const { low, high } = limits[at] as ScaledLimits;
    put(box, at, margin, low, high, degreesOfFreedom);
  });
  const joint = (): number => boxProbability(box.low, box.high, factor, degreesOfFreedom, size);
  const all = joint();
  return measures.map((_, at) => {
    const [low, high] = [box.low[at] as number, box.high[at] as number];
    box.low[at] = Number.NEGATIVE_INFINITY;
    box.high[at] = Number.POSITIVE_INFINITY;
    const without = joint();
    box.low[at] = low;
    box.high[at] = high;
    return Math.max(0, without - all);
  });
}

const emptyBox = (size: number): Box => ({ low: new Float64Array(size), high: new Float64Array(size) });

/** Puts one margin's limits into the box. @returns the margin's own chance */
function put(
  box: Box,
  at: number,
  margin: PredictiveMargin,
  low: number,
  high: number,
  degreesOfFreedom: number,
): number {
  const own = standardised(margin, low, high);
  const from = margin.degreesOfFreedom;
  const [lowTail, highTail] = [studentTCdf(-Math.abs(own.low), from), studentTCdf(-Math.abs(own.high), from)];
  box.low[at] = sameTail(own.low, lowTail, from, degreesOfFreedom);
  box.high[at] = sameTail(own.high, highTail, from, degreesOfFreedom);
  return chanceFromTails(own, lowTail, highTail);
}
