import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { smallestBetween } from "./smallestBetween.ts";

/** One observation of something that runs in proportion to `along`, faster in some groups than in others. */
export interface SlopeObservation {
  readonly group: string;
  /** What the group's own slope multiplies: hours. */
  readonly along: number;
  /** Fixed predictors, the intercept's 1 among them where there is one. */
  readonly predictors: readonly number[];
  readonly response: number;
  /** Variance known beforehand up to a common factor: that of a count. */
  readonly variance: number;
}

export interface RandomSlopesFit {
  readonly observations: number;
  readonly groups: number;
  readonly coefficients: Float64Array;
  /** Row-major, of the coefficients. */
  readonly covariance: Float64Array;
  /** Variance of the groups' own slopes about the fixed part. */
  readonly slopeVariance: number;
  /** By what the variances given are multiplied; 1 where they say all. */
  readonly varianceFactor: number;
}

/** One group's share in the sums that every ratio of variances is tried on. */
interface GroupSums {
  /** X′D⁻¹h, h′D⁻¹h and h′D⁻¹y, with D the variances given and h the column `along`. */
  readonly cross: Float64Array;
  readonly square: number;
  readonly response: number;
}

interface Sums {
  readonly parameters: number;
  readonly observations: number;
  /** Lower triangle of X′D⁻¹X, row-major in a square. */
  readonly triangle: Float64Array;
  readonly vector: Float64Array;
  readonly square: number;
  readonly groups: readonly GroupSums[];
}

interface Trial {
  readonly criterion: number;
  readonly coefficients: Float64Array;
  readonly inverse: Matrix;
  readonly varianceFactor: number;
}

/**
 * Least squares with a slope of its own for every group: y = x′β + vᵍ h + e, where vᵍ varies from group to group and e has
 * the variance given, up to a common factor. The ratio of the two variances is found by restricted maximum likelihood
 * (Patterson and Thompson 1971, Biometrika 58, 545–554; from memory), the coefficients by generalised least squares at that
 * ratio; each group's covariance is inverted by Sherman and Morrison's formula, so that a trial costs one pass over the
 * groups. Observations of one group are thereby not taken for independent ones.
 *
 * @returns null where the predictors cannot be told apart, or there are not two observations more than predictors
 * @throws RangeError for predictors of unequal length, values that are not finite, or a variance not above 0
 */
export function fitRandomSlopes(observations: readonly SlopeObservation[]): RandomSlopesFit | null {
  const parameters = observations[0]?.predictors.length ?? 0;
  if (parameters === 0 || observations.length < parameters + 2) return null;
  const rough = attempt(sumUp(observations, parameters), 0);
  if (rough === null) return null;
  // What plain least squares leaves is small beside the responses: sums of its squares keep their digits.
  const left = observations.map((row) => ({
    ...row,
    response: row.response - productOf(row.predictors, rough.coefficients),
  }));
  const sums = sumUp(left, parameters);
  const scale = observations.length / sums.groups.reduce((sum, { square }) => sum + square, 0);
  const at = (logRatio: number): Trial | null => attempt(sums, scale * Math.exp(logRatio));
  const none = attempt(sums, 0);
  if (none === null) return null;
  // From slopes that are next to nothing beside the counts to ones beside which the counts are next to nothing.
  const inside = smallestBetween((logRatio) => at(logRatio)?.criterion ?? Number.POSITIVE_INFINITY, -9, 14, 1e-7);
  const found = at(inside);
  const best = found !== null && found.criterion < none.criterion ? found : none;
  const ratio = best === found ? scale * Math.exp(inside) : 0;
  return {
    observations: observations.length,
    groups: sums.groups.length,
    coefficients: best.coefficients.map((value, term) => value + (rough.coefficients[term] as number)),
    covariance: Float64Array.from(best.inverse.to1DArray(), (value) => value * best.varianceFactor),
    slopeVariance: ratio * best.varianceFactor,
    varianceFactor: best.varianceFactor,
  };
}

const productOf = (predictors: readonly number[], coefficients: Float64Array): number =>
  predictors.reduce((sum, value, term) => sum + value * (coefficients[term] as number), 0);

function sumUp(observations: readonly SlopeObservation[], parameters: number): Sums {
  const triangle = new Float64Array(parameters * parameters);
  const vector = new Float64Array(parameters);
  let square = 0;
  const groups = new Map<string, { cross: Float64Array; square: number; response: number }>();
  for (const { group, along, predictors, response, variance } of observations) {
    if (predictors.length !== parameters) {
      throw new RangeError(`fitRandomSlopes requires ${parameters} predictors throughout; got ${predictors.length}`);
    }
    if (!(variance > 0) || ![along, response, variance, ...predictors].every(Number.isFinite)) {
      throw new RangeError(`fitRandomSlopes requires finite values and variances above 0; got ${variance} in ${group}`);
    }
    const own = groups.get(group) ?? { cross: new Float64Array(parameters), square: 0, response: 0 };
    groups.set(group, own);
    const weight = 1 / variance;
    for (let row = 0; row < parameters; row += 1) {
      const value = weight * (predictors[row] as number);
      vector[row] = (vector[row] as number) + value * response;
      own.cross[row] = (own.cross[row] as number) + value * along;
      for (let column = 0; column <= row; column += 1) {
        const place = row * parameters + column;
        triangle[place] = (triangle[place] as number) + value * (predictors[column] as number);
      }
    }
    square += weight * response * response;
    own.square += weight * along * along;
    own.response += weight * along * response;
  }
  return { parameters, observations: observations.length, triangle, vector, square, groups: [...groups.values()] };
}

/** The fit at one ratio of the slopes' variance to the variances given, and how likely the ratio is: lower is likelier. */
function attempt(sums: Sums, ratio: number): Trial | null {
  const { parameters, observations } = sums;
  const triangle = Float64Array.from(sums.triangle);
  const vector = Float64Array.from(sums.vector);
  let square = sums.square;
  let logDeterminant = 0;
  if (ratio > 0) {
    for (const group of sums.groups) {
      const share = ratio / (1 + ratio * group.square);
      logDeterminant += Math.log1p(ratio * group.square);
      square -= share * group.response * group.response;
      for (let row = 0; row < parameters; row += 1) {
        const cross = share * (group.cross[row] as number);
        vector[row] = (vector[row] as number) - cross * group.response;
        for (let column = 0; column <= row; column += 1) {
          const place = row * parameters + column;
          triangle[place] = (triangle[place] as number) - cross * (group.cross[column] as number);
        }
      }
    }
  }
  const matrix = symmetric(triangle, parameters);
  const root = new CholeskyDecomposition(matrix);
  if (!root.isPositiveDefinite() || isNearlySingular(root.lowerTriangularMatrix, matrix)) return null;
  const inverse = root.solve(Matrix.eye(parameters));
  const coefficients = Float64Array.from(root.solve(Matrix.columnVector(Array.from(vector))).to1DArray());
  const explained = coefficients.reduce((sum, value, at) => sum + value * (vector[at] as number), 0);
  const freedom = observations - parameters;
  const varianceFactor = Math.max(square - explained, Number.EPSILON * square) / freedom;
  for (let row = 0; row < parameters; row += 1)
    logDeterminant += 2 * Math.log(root.lowerTriangularMatrix.get(row, row));
  return { criterion: freedom * Math.log(varianceFactor) + logDeterminant, coefficients, inverse, varianceFactor };
}

/** The whole of a symmetric matrix from its lower triangle, the same to the last digit on both sides. */
function symmetric(triangle: Float64Array, size: number): Matrix {
  const matrix = Matrix.zeros(size, size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      const value = triangle[row * size + column] as number;
      matrix.set(row, column, value);
      matrix.set(column, row, value);
    }
  }
  return matrix;
}

/** A predictor of which next to nothing is its own beside those before it. */
function isNearlySingular(lower: Matrix, matrix: Matrix): boolean {
  for (let row = 0; row < matrix.rows; row += 1) {
    if (!(lower.get(row, row) ** 2 > 1e-10 * matrix.get(row, row))) return true;
  }
  return false;
}
