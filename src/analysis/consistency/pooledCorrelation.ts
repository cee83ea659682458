import type { PairSums } from "./pairSums.ts";

export interface PooledCorrelation {
  /** Row-major, shrunk; ones on the diagonal. */
  readonly matrix: Float64Array;
  /** What share of each correlation was taken away, 0 to 1. */
  readonly shrunkBy: number;
}

/**
 * Correlations of measures within varieties, pooled over them and shrunk towards none. Each variety's products enter in
 * units of its own spread, so that one that scatters widely does not speak for all. The share taken away is Schäfer and
 * Strimmer's (2005, Statistical Applications in Genetics and Molecular Biology 4(1), 32): Σ var(r) / Σ r², with the
 * large-sample variance (1 − r²)² / ν of a correlation with ν degrees of freedom; from memory. Few batches therefore
 * leave little correlation, and where none can be told it is all taken away.
 *
 * @param groups one for each variety, all of the same columns
 * @param spread standard deviation of column `j` in group `at`, to weigh it by; 0 leaves the group out
 */
export function pooledCorrelation(
  groups: readonly PairSums[],
  spread: (at: number, j: number) => number,
): PooledCorrelation {
  const columns = groups[0]?.columns ?? 0;
  const matrix = new Float64Array(columns * columns);
  let uncertain = 0;
  let found = 0;
  for (let j = 0; j < columns; j += 1) {
    matrix[j * columns + j] = 1;
    for (let k = 0; k < j; k += 1) {
      const { r, degreesOfFreedom } = pooledPair(groups, spread, j, k);
      matrix[j * columns + k] = r;
      matrix[k * columns + j] = r;
      if (degreesOfFreedom < 1) continue;
      uncertain += (1 - r * r) ** 2 / degreesOfFreedom;
      found += r * r;
    }
  }
  const shrunkBy = found > 0 ? Math.min(1, uncertain / found) : 1;
  for (let j = 0; j < columns; j += 1) {
    for (let k = 0; k < columns; k += 1) {
      if (j !== k) matrix[j * columns + k] = (matrix[j * columns + k] as number) * (1 - shrunkBy);
    }
  }
  return { matrix, shrunkBy };
}

function pooledPair(
  groups: readonly PairSums[],
  spread: (at: number, j: number) => number,
  j: number,
  k: number,
): { readonly r: number; readonly degreesOfFreedom: number } {
  let [products, first, second, degreesOfFreedom] = [0, 0, 0, 0];
  groups.forEach((group, at) => {
    const pairs = group.pairs(j, k);
    const [one, other] = [spread(at, j), spread(at, k)];
    if (pairs < 2 || !(one > 0 && other > 0)) return;
    products += group.productsAboutMeans(j, k) / (one * other);
    first += group.squaresAboutMean(j, k) / (one * one);
    second += group.squaresAboutMean(k, j) / (other * other);
    degreesOfFreedom += pairs - 1;
  });
  const scale = Math.sqrt(first * second);
  // Rounding may leave a trace beyond one.
  const r = scale > 0 ? Math.min(1, Math.max(-1, products / scale)) : 0;
  return { r, degreesOfFreedom };
}

/** Below this a variable is taken as wholly told by those before it. */
const LEAST_PIVOT = 1e-6;

/**
 * The lower triangle L with LL′ = R of some of a correlation matrix's columns (Cholesky). Pairs counted over different
 * rows may not fit together; correlations are then weakened, a tenth at a time, until they do.
 */
export function correlationFactor({ matrix }: PooledCorrelation, chosen: readonly number[]): Float64Array {
  const columns = Math.sqrt(matrix.length);
  for (let weight = 1; ; weight *= 0.9) {
    const factor = choleskyFactor(chosen.length, (row, column) =>
      row === column ? 1 : weight * (matrix[(chosen[row] as number) * columns + (chosen[column] as number)] as number),
    );
    if (factor !== null) return factor;
  }
}

function choleskyFactor(size: number, entry: (row: number, column: number) => number): Float64Array | null {
  const factor = new Float64Array(size * size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let rest = entry(row, column);
      for (let before = 0; before < column; before += 1) {
        rest -= (factor[row * size + before] as number) * (factor[column * size + before] as number);
      }
      if (row === column) {
        if (rest < LEAST_PIVOT) return null;
        factor[row * size + row] = Math.sqrt(rest);
      } else factor[row * size + column] = rest / (factor[column * size + column] as number);
    }
  }
  return factor;
}
