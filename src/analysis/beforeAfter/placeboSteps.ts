import type { PredictorColumn } from "../factorisation.ts";
import type { FitFault } from "../fitFault.ts";
import { TriangularFactor } from "../triangularFactor.ts";

/** A step tried at a date where nothing was changed. */
export interface PlaceboStep {
  /** The first row after it. */
  readonly row: number;
  readonly size: number;
  /** Size over its plain standard error: comparable between steps with many rows beside them and with few. */
  readonly t: number;
}

export interface PlaceboSteps {
  readonly steps: readonly PlaceboStep[];
  /** What is left between rows beside the covariates and the level of each stretch. */
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
}

/**
 * Tries a step at every row that has `fewest` rows before and after it within its own stretch, where nothing is logged
 * that could have moved the value. One model holds for all rows, a level a stretch and the covariates, so that each trial
 * costs a few operations: sums of residuals and of covariates from the last row of a stretch back, by the theorem of Frisch
 * and Waugh (1933, Econometrica 1, 387–401). The result is what least squares with that step beside them gives.
 *
 * @param stretches of each row, rows in time order: equal numbers stand together
 * @returns a fault where the covariates follow from each other or leave no degrees of freedom
 * @throws RangeError for lengths that differ
 */
export function placeboSteps(
  covariates: readonly PredictorColumn[],
  response: ArrayLike<number>,
  stretches: readonly number[],
  fewest: number,
): PlaceboSteps | FitFault {
  const observations = response.length;
  if (stretches.length !== observations) {
    throw new RangeError(`placeboSteps requires a stretch a row; got ${stretches.length} for ${observations}`);
  }
  const ends = stretchEnds(stretches);
  const y = centredWithin(response, ends);
  const columns = covariates
    .map((column) => ({ ...column, values: centredWithin(column.values, ends), whole: column.values }))
    // A variety of which every row stands in one stretch alone with no other has nothing of its own left.
    .filter(({ values, whole }) => lengthOf(values) > 1e-9 * lengthOf(whole));
  const degreesOfFreedom = observations - ends.length - columns.length - 1;
  if (degreesOfFreedom < 1) {
    return { kind: "too-few", observations, needed: observations + 1 - degreesOfFreedom };
  }
  const factor = new TriangularFactor(columns.length);
  // One row at a time is looked at: thousands of small arrays would cost more than the sums.
  const held = new Float64Array(columns.length);
  const rowOf = (row: number): Float64Array => {
    columns.forEach(({ values }, at) => {
      held[at] = values[row] as number;
    });
    return held;
  };
  y.forEach((value, row) => {
    factor.append(rowOf(row), value);
  });
  if (!factor.isFullRank()) return { kind: "collinear", column: columns.at(-1)?.label ?? columns.at(-1)?.name ?? "" };
  const residuals = y.map((value, row) => value - factor.project(rowOf(row)).estimate);
  const residualSquares = lengthOf(residuals) ** 2;
  const steps: PlaceboStep[] = [];
  let from = 0;
  for (const to of ends) {
    const sums = new Float64Array(columns.length);
    let residual = 0;
    for (let row = to - 1; row >= from + fewest; row -= 1) {
      residual += residuals[row] as number;
      columns.forEach(({ values }, at) => {
        sums[at] = (sums[at] as number) + (values[row] as number);
      });
      const after = to - row;
      if (after < fewest) continue;
      const own = (after * (row - from)) / (to - from);
      // What the covariates account for of the step's own square.
      const left = own - factor.project(sums).leverage;
      if (!(left > 1e-6 * own)) continue;
      const step = residual / left;
      const variance = Math.max(0, residualSquares - step * residual) / degreesOfFreedom;
      if (variance > 0) steps.push({ row, size: step, t: step / Math.sqrt(variance / left) });
    }
    from = to;
  }
  return {
    steps: steps.sort((a, b) => a.row - b.row),
    residualStandardDeviation: Math.sqrt(residualSquares / (degreesOfFreedom + 1)),
    degreesOfFreedom: degreesOfFreedom + 1,
  };
}

/** One past the last row of each stretch. */
function stretchEnds(stretches: readonly number[]): number[] {
  return stretches.flatMap((stretch, row) => (stretch === stretches[row + 1] ? [] : [row + 1]));
}

function centredWithin(values: ArrayLike<number>, ends: readonly number[]): Float64Array {
  const centred = Float64Array.from(values);
  let from = 0;
  for (const to of ends) {
    let sum = 0;
    for (let row = from; row < to; row += 1) sum += centred[row] as number;
    const centre = sum / (to - from);
    for (let row = from; row < to; row += 1) centred[row] = (centred[row] as number) - centre;
    from = to;
  }
  return centred;
}

function lengthOf(values: ArrayLike<number>): number {
  let squares = 0;
  for (let row = 0; row < values.length; row += 1) squares += (values[row] as number) ** 2;
  return Math.sqrt(squares);
}
