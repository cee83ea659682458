import { type DriftSeries, requireDriftSeries } from "./driftSeries.ts";

/**
 * Weighted sums over the loads from one on, with the constant and the covariates taken out of every column: of time u,
 * of 1 (v), and of the value y. They hold all that a step or a rise beginning there needs.
 */
export interface SplitSums {
  readonly uu: number;
  readonly uv: number;
  readonly vv: number;
  readonly uy: number;
  readonly vy: number;
  /** Mean over all loads of u and of v before anything was taken out. */
  readonly meanU: number;
  readonly meanV: number;
}

/** A series made ready for change models: everything about a change at any time follows without another pass. */
export interface ChangeSums {
  readonly observations: number;
  /** Constant and covariates. */
  readonly levelParameters: number;
  /** Weighted mean of the values: the level at the covariates' weighted means. */
  readonly level: number;
  readonly totalWeight: number;
  /** Weighted residual sum of squares with no change at all. */
  readonly totalSquares: number;
  /** Below this a sum of squares is rounding. */
  readonly roundingSquares: number;
  readonly logWeights: number;
  readonly days: Float64Array;
  /** Time in spans of the series from its middle, so that sums do not cancel. */
  readonly times: Float64Array;
  readonly spanDays: number;
  readonly middleDay: number;
  /** By the first load after the change, 1 to n − 1; entry 0 is not used. */
  readonly splits: readonly SplitSums[];
}

/**
 * Takes the sums in one pass from the last load to the first, after an orthonormal basis of the constant and the
 * covariates (Gram–Schmidt, twice over). Cost: loads × covariates. The covariates must not follow from each other: ask
 * `factorise` first.
 *
 * @throws RangeError for a broken series
 */
export function changeSums(series: DriftSeries): ChangeSums {
  requireDriftSeries(series, "changeSums");
  const days = Float64Array.from(series.days);
  const count = days.length;
  const weights = Float64Array.from(series.values, (_, at) => series.weights?.[at] ?? 1);
  const totalWeight = weights.reduce((sum, weight) => sum + weight, 0);
  const roots = weights.map(Math.sqrt);
  const firstDay = days[0] as number;
  const spanDays = (days[count - 1] as number) - firstDay;
  const middleDay = firstDay + spanDays / 2;
  const times = days.map((day) => (day - middleDay) / spanDays);

  const level = weightedMean(series.values, weights, totalWeight);
  const basis = orthonormal([
    roots,
    ...(series.covariates ?? []).map(({ values }) => {
      const centre = weightedMean(values, weights, totalWeight);
      return roots.map((root, row) => root * ((values[row] as number) - centre));
    }),
  ]);
  const y = roots.map((root, row) => root * ((series.values[row] as number) - level));
  const plainSquares = y.reduce((sum, value) => sum + value * value, 0);
  for (const direction of basis) remove(y, direction);

  const splits: SplitSums[] = new Array(count);
  const basisU = new Float64Array(basis.length);
  const basisV = new Float64Array(basis.length);
  let [uu, uv, vv, uy, vy] = [0, 0, 0, 0, 0];
  for (let row = count - 1; row >= 1; row -= 1) {
    const root = roots[row] as number;
    const u = root * (times[row] as number);
    uu += u * u;
    uv += u * root;
    vv += root * root;
    uy += u * (y[row] as number);
    vy += root * (y[row] as number);
    const own = { uu, uv, vv };
    basis.forEach((direction, at) => {
      const cu = (basisU[at] as number) + (direction[row] as number) * u;
      const cv = (basisV[at] as number) + (direction[row] as number) * root;
      basisU[at] = cu;
      basisV[at] = cv;
      own.uu -= cu * cu;
      own.uv -= cu * cv;
      own.vv -= cv * cv;
    });
    const rootWeight = Math.sqrt(totalWeight);
    splits[row] = {
      ...own,
      uy,
      vy,
      meanU: (basisU[0] as number) / rootWeight,
      meanV: (basisV[0] as number) / rootWeight,
    };
  }
  return {
    observations: count,
    levelParameters: basis.length,
    level,
    totalWeight,
    totalSquares: y.reduce((sum, value) => sum + value * value, 0),
    roundingSquares: 1e-20 * (plainSquares + totalWeight * level * level) + Number.MIN_VALUE,
    logWeights: weights.reduce((sum, weight) => sum + Math.log(weight), 0),
    days,
    times,
    spanDays,
    middleDay,
    splits,
  };
}

function weightedMean(values: ArrayLike<number>, weights: Float64Array, total: number): number {
  let sum = 0;
  for (let row = 0; row < weights.length; row += 1) sum += (weights[row] as number) * (values[row] as number);
  return sum / total;
}

function orthonormal(columns: readonly Float64Array[]): Float64Array[] {
  const basis: Float64Array[] = [];
  for (const column of columns) {
    const rest = column.slice();
    for (let round = 0; round < 2; round += 1) for (const direction of basis) remove(rest, direction);
    const length = Math.sqrt(rest.reduce((sum, value) => sum + value * value, 0));
    basis.push(rest.map((value) => value / length));
  }
  return basis;
}

function remove(column: Float64Array, direction: Float64Array): void {
  let along = 0;
  for (let row = 0; row < column.length; row += 1) along += (column[row] as number) * (direction[row] as number);
  for (let row = 0; row < column.length; row += 1) {
    column[row] = (column[row] as number) - along * (direction[row] as number);
  }
}
