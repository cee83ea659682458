/**
 * Sums over one group's rows for each pair of columns that a row has both of; a value that is NaN was not recorded. Each
 * column is counted from the first value it had, so that sums of squares do not cancel. Rows can be added at any time.
 */
export class PairSums {
  readonly columns: number;
  readonly #start: Float64Array;
  /** For each ordered pair (j, k): how many rows have both, and over those Σx_j, Σx_j², Σx_j x_k. */
  readonly #count: Float64Array;
  readonly #sum: Float64Array;
  readonly #squares: Float64Array;
  readonly #products: Float64Array;

  constructor(columns: number) {
    this.columns = columns;
    this.#start = new Float64Array(columns).fill(Number.NaN);
    this.#count = new Float64Array(columns * columns);
    this.#sum = new Float64Array(columns * columns);
    this.#squares = new Float64Array(columns * columns);
    this.#products = new Float64Array(columns * columns);
  }

  add(row: ArrayLike<number>): void {
    const { columns } = this;
    for (let j = 0; j < columns; j += 1) {
      if (Number.isNaN(this.#start[j])) this.#start[j] = row[j] as number;
    }
    for (let j = 0; j < columns; j += 1) {
      const x = (row[j] as number) - (this.#start[j] as number);
      if (Number.isNaN(x)) continue;
      for (let k = 0; k < columns; k += 1) {
        const y = (row[k] as number) - (this.#start[k] as number);
        if (Number.isNaN(y)) continue;
        const at = j * columns + k;
        this.#count[at] = (this.#count[at] as number) + 1;
        this.#sum[at] = (this.#sum[at] as number) + x;
        this.#squares[at] = (this.#squares[at] as number) + x * x;
        this.#products[at] = (this.#products[at] as number) + x * y;
      }
    }
  }

  /** How many rows have column j. */
  count(j: number): number {
    return this.#count[j * this.columns + j] as number;
  }

  /** Mean of column j; NaN where no row has it. */
  mean(j: number): number {
    const at = j * this.columns + j;
    return (this.#start[j] as number) + (this.#sum[at] as number) / (this.#count[at] as number);
  }

  /** Σ(x_j − x̄_j)² over the rows that have column k as well. */
  squaresAboutMean(j: number, k = j): number {
    const at = j * this.columns + k;
    const count = this.#count[at] as number;
    if (count === 0) return 0;
    return Math.max(0, (this.#squares[at] as number) - (this.#sum[at] as number) ** 2 / count);
  }

  /** Σ(x_j − x̄_j)(x_k − x̄_k) over the rows that have both. */
  productsAboutMeans(j: number, k: number): number {
    const at = j * this.columns + k;
    const count = this.#count[at] as number;
    if (count === 0) return 0;
    const other = this.#sum[k * this.columns + j] as number;
    return (this.#products[at] as number) - ((this.#sum[at] as number) * other) / count;
  }

  /** How many rows have both. */
  pairs(j: number, k: number): number {
    return this.#count[j * this.columns + k] as number;
  }
}
