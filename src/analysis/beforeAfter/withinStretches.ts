import type { PredictorColumn } from "../factorisation.ts";
import type { FitFault } from "../fitFault.ts";
import { TriangularFactor } from "../triangularFactor.ts";

/** What covariates explain of a value within stretches that each have a level of their own. */
export interface WithinStretches {
  /** Every row's value less what the covariates explain of it; rows outside the stretches too. */
  readonly adjusted: Float64Array;
  /** What is left between rows beside the covariates and the level of each stretch. */
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
}

/**
 * Least squares of `response` on covariates with a level for each stretch, by taking each stretch's mean out of every column
 * (Frisch and Waugh 1933, Econometrica 1, 387–401; from memory): the cost does not grow with the number of stretches.
 *
 * @param stretches of each row, rows in time order: equal numbers stand together; null: the row takes no part in the fit
 * @returns a fault where the covariates follow from each other or leave no degrees of freedom
 * @throws RangeError for lengths that differ
 */
export function withinStretches(
  covariates: readonly PredictorColumn[],
  response: ArrayLike<number>,
  stretches: readonly (number | null)[],
): WithinStretches | FitFault {
  if (stretches.length !== response.length) {
    throw new RangeError(`withinStretches requires a stretch a row; got ${stretches.length} for ${response.length}`);
  }
  const spans = spansOf(stretches);
  const observations = spans.reduce((sum, { from, to }) => sum + to - from, 0);
  const y = centredWithin(response, spans);
  const columns = covariates
    .map(({ values, ...about }) => ({ ...about, whole: values, values: centredWithin(values, spans) }))
    // A variety that fills a stretch alone and stands in no other has nothing of its own left.
    .filter(({ values, whole }) => lengthOf(values) > 1e-9 * lengthOf(whole));
  const degreesOfFreedom = observations - spans.length - columns.length;
  if (degreesOfFreedom < 1) return { kind: "too-few", observations, needed: observations + 1 - degreesOfFreedom };
  const factor = new TriangularFactor(columns.length);
  // One row at a time is looked at: thousands of small arrays would cost more than the sums.
  const held = new Float64Array(columns.length);
  const rowOf = (of: (column: (typeof columns)[number]) => ArrayLike<number>, row: number): Float64Array => {
    columns.forEach((column, at) => {
      held[at] = of(column)[row] as number;
    });
    return held;
  };
  for (const { from, to } of spans) {
    for (let row = from; row < to; row += 1)
      factor.append(
        rowOf(({ values }) => values, row),
        y[row] as number,
      );
  }
  if (!factor.isFullRank()) return { kind: "collinear", column: columns.at(-1)?.label ?? columns.at(-1)?.name ?? "" };
  return {
    adjusted: Float64Array.from(
      response,
      (value, row) => value - factor.project(rowOf(({ whole }) => whole, row)).estimate,
    ),
    residualStandardDeviation: Math.sqrt(factor.residualSquares / degreesOfFreedom),
    degreesOfFreedom,
  };
}

/** A run of rows of one stretch: `from` up to, not including, `to`. */
interface Span {
  readonly from: number;
  readonly to: number;
}

export function spansOf(stretches: readonly (number | null)[]): readonly Span[] {
  const spans: Span[] = [];
  let from = 0;
  stretches.forEach((stretch, row) => {
    if (stretch === stretches[row + 1]) return;
    if (stretch !== null) spans.push({ from, to: row + 1 });
    from = row + 1;
  });
  return spans;
}

function centredWithin(values: ArrayLike<number>, spans: readonly Span[]): Float64Array {
  const centred = new Float64Array(values.length);
  for (const { from, to } of spans) {
    let sum = 0;
    for (let row = from; row < to; row += 1) sum += values[row] as number;
    const centre = sum / (to - from);
    for (let row = from; row < to; row += 1) centred[row] = (values[row] as number) - centre;
  }
  return centred;
}

function lengthOf(values: ArrayLike<number>): number {
  let squares = 0;
  for (let row = 0; row < values.length; row += 1) squares += (values[row] as number) ** 2;
  return Math.sqrt(squares);
}
