/**
 * One phase of a chart in time order: how far each value lies from its centre, in the measure's unit, and the sigma
 * that it is judged by. Where varieties share a chart each value has its own variety's centre and sigma.
 */
export interface ChartSeries {
  readonly deviations: ArrayLike<number>;
  readonly sigmas: ArrayLike<number>;
}

/**
 * Values come from arithmetic that agrees between engines to about 1e-12: what lies this close, in sigma, to a line or to its
 * neighbour counts as on it, so that a signal in one engine is a signal in every other.
 */
export const tieTolerance = 1e-9;

/** A chart series of values that share one centre and one sigma. */
export function chartSeries(values: ArrayLike<number>, centre: number, sigma: number): ChartSeries {
  return {
    deviations: Float64Array.from(values, (value) => value - centre),
    sigmas: new Float64Array(values.length).fill(sigma),
  };
}

/** @throws RangeError for lengths that differ, a sigma that is not positive or a deviation that is not a number */
export function requireSeries({ deviations, sigmas }: ChartSeries, caller: string): void {
  if (deviations.length !== sigmas.length) {
    throw new RangeError(`${caller} requires a sigma for each value; got ${deviations.length} and ${sigmas.length}`);
  }
  for (let at = 0; at < deviations.length; at += 1) {
    const sigma = sigmas[at] as number;
    if (!(sigma > 0 && Number.isFinite(sigma) && Number.isFinite(deviations[at] as number))) {
      throw new RangeError(`${caller} requires finite values and positive sigmas; got ${deviations[at]} and ${sigma}`);
    }
  }
}
