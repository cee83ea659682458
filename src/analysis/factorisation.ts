import { Matrix, QrDecomposition } from "ml-matrix";
import type { FitFault } from "./fitFault.ts";

/** One predictor, one value an observation, in the order of the response. */
export interface PredictorColumn {
  /** Code's name for it: `bedDepthMetres`. */
  readonly name: string;
  readonly values: ArrayLike<number>;
  /** What a sentence calls it: `bed depth`. */
  readonly label?: string;
}

/** A design matrix taken apart, X = QR, with what every later step needs of it. */
export interface Factorisation {
  readonly observations: number;
  readonly parameters: number;
  /** Names of the columns of X; `intercept` first where there is one. */
  readonly names: readonly string[];
  /** Row-major R⁻¹: (X′X)⁻¹ = R⁻¹R⁻ᵀ. */
  readonly inverseFactor: Float64Array;
  /** Row-major (X′X)⁻¹xᵢ: how far each coefficient moves for one unit of observation i. */
  readonly influence: Float64Array;
  /** Diagonal of the hat matrix. */
  readonly leverage: Float64Array;
  /** Least-squares coefficients of a response. */
  readonly solve: (response: ArrayLike<number>) => Float64Array;
}

/** Above this share of an observation in its own fitted value, nothing else in the data says anything about it. */
const wholeLeverage = 1 - 1e-9;

/**
 * Takes the design apart by Householder QR on columns scaled to length 1, so that the rank test does not depend on
 * units. A column is taken as following from those before it where less than n × 1e-14 of its length is its own: far
 * below the collinearity of NIST's Longley and Wampler sets, far above rounding.
 *
 * @returns the factorisation, or the fault that forbids a fit
 * @throws RangeError for columns of unequal length, repeated names or values that are not finite
 */
export function factorise(columns: readonly PredictorColumn[], intercept: boolean): Factorisation | FitFault {
  const names = namesOf(columns, intercept);
  const observations = columns[0]?.values.length ?? 0;
  const parameters = names.length;
  requireFiniteColumns(columns, observations);
  if (observations < parameters + 2) return { kind: "too-few", observations, needed: parameters + 2 };
  if (intercept) {
    const constant = columns.find((column) => doesNotVary(column.values));
    if (constant) return { kind: "constant", column: labelOf(constant), observations };
  }

  const design = new Matrix(observations, parameters);
  const scale = new Float64Array(parameters);
  for (let term = 0; term < parameters; term += 1) {
    const values = intercept ? columns[term - 1]?.values : columns[term]?.values;
    let squares = 0;
    for (let row = 0; row < observations; row += 1) squares += (values?.[row] ?? 1) ** 2;
    const length = Math.sqrt(squares);
    if (length === 0) return { kind: "constant", column: labelOf(columns[term] as PredictorColumn), observations };
    scale[term] = length;
    for (let row = 0; row < observations; row += 1) design.set(row, term, (values?.[row] ?? 1) / length);
  }

  const decomposition = new QrDecomposition(design);
  const triangle = decomposition.upperTriangularMatrix;
  for (let term = 0; term < parameters; term += 1) {
    if (Math.abs(triangle.get(term, term)) < observations * 1e-14) {
      return { kind: "collinear", column: labelOf(columns[intercept ? term - 1 : term] as PredictorColumn) };
    }
  }

  const inverseFactor = invertTriangle(triangle, scale);
  const basis = decomposition.orthogonalMatrix;
  const leverage = new Float64Array(observations);
  const influence = new Float64Array(observations * parameters);
  for (let row = 0; row < observations; row += 1) {
    for (let term = 0; term < parameters; term += 1) {
      const own = basis.get(row, term);
      leverage[row] = (leverage[row] as number) + own * own;
      for (let above = 0; above <= term; above += 1) {
        const at = row * parameters + above;
        influence[at] = (influence[at] as number) + (inverseFactor[above * parameters + term] as number) * own;
      }
    }
    if ((leverage[row] as number) > wholeLeverage) {
      const column = columns.find(({ values }) => variesOnlyAt(values, row));
      return { kind: "single-observation", column: column ? labelOf(column) : null, row, observations };
    }
  }

  const solve = (response: ArrayLike<number>): Float64Array => {
    const scaled = decomposition.solve(Matrix.columnVector(Array.from(response)));
    return scale.map((length, term) => scaled.get(term, 0) / length);
  };
  return { observations, parameters, names, inverseFactor, influence, leverage, solve };
}

/** What a sentence calls the column. */
export function labelOf(column: PredictorColumn): string {
  return column.label ?? column.name;
}

/** Whether all values are the same. */
export function doesNotVary(values: ArrayLike<number>): boolean {
  for (let row = 1; row < values.length; row += 1) if (values[row] !== values[0]) return false;
  return true;
}

function variesOnlyAt(values: ArrayLike<number>, row: number): boolean {
  const usual = values[row === 0 ? 1 : 0];
  for (let other = 0; other < values.length; other += 1) if (other !== row && values[other] !== usual) return false;
  return true;
}

function namesOf(columns: readonly PredictorColumn[], intercept: boolean): string[] {
  if (columns.length === 0) throw new RangeError("a fit requires at least one predictor; got none");
  const names = [...(intercept ? ["intercept"] : []), ...columns.map(({ name }) => name)];
  const repeated = names.find((name, at) => names.indexOf(name) !== at);
  if (repeated !== undefined) throw new RangeError(`predictors require names of their own; got ${repeated} twice`);
  return names;
}

function requireFiniteColumns(columns: readonly PredictorColumn[], observations: number): void {
  for (const { name, values } of columns) {
    if (values.length !== observations) {
      throw new RangeError(`predictors require the same length; ${name} has ${values.length}, others ${observations}`);
    }
    for (let row = 0; row < observations; row += 1) {
      if (!Number.isFinite(values[row]))
        throw new RangeError(`${name} requires finite values; got ${values[row]} at ${row}`);
    }
  }
}

/** Inverse of an upper triangle, the scaling of the columns undone. */
function invertTriangle(triangle: Matrix, scale: Float64Array): Float64Array {
  const size = scale.length;
  const inverse = new Float64Array(size * size);
  for (let column = 0; column < size; column += 1) {
    for (let row = column; row >= 0; row -= 1) {
      let rest = row === column ? 1 : 0;
      for (let between = row + 1; between <= column; between += 1) {
        rest -= triangle.get(row, between) * (inverse[between * size + column] as number);
      }
      inverse[row * size + column] = rest / triangle.get(row, row);
    }
  }
  return inverse.map((value, at) => value / (scale[Math.floor(at / size)] as number));
}
