/**
 * The triangular factor R of a growing design, with z = Q′y beside it and the residual sum of squares, kept up to date
 * row by row with Givens rotations. Each row costs a few p² operations, and no normal equations are formed.
 */
export class TriangularFactor {
  readonly parameters: number;
  observations = 0;
  residualSquares = 0;
  /** Row-major, the last column holding z. */
  readonly #rows: Float64Array;
  readonly #squares: Float64Array;
  readonly #incoming: Float64Array;

  constructor(parameters: number) {
    this.parameters = parameters;
    this.#rows = new Float64Array(parameters * (parameters + 1));
    this.#squares = new Float64Array(parameters);
    this.#incoming = new Float64Array(parameters + 1);
  }

  /** Rotates one observation into the factor; what is left of its response is residual. */
  append(row: ArrayLike<number>, response: number): void {
    const width = this.parameters + 1;
    const rows = this.#rows;
    const incoming = this.#incoming;
    incoming.set(row);
    incoming[this.parameters] = response;
    for (let term = 0; term < this.parameters; term += 1) {
      const entry = incoming[term] as number;
      this.#squares[term] = (this.#squares[term] as number) + (row[term] as number) ** 2;
      if (entry === 0) continue;
      const diagonal = rows[term * width + term] as number;
      const length = Math.sqrt(diagonal * diagonal + entry * entry);
      const cosine = diagonal / length;
      const sine = entry / length;
      for (let column = term; column < width; column += 1) {
        const above = rows[term * width + column] as number;
        const below = incoming[column] as number;
        rows[term * width + column] = cosine * above + sine * below;
        incoming[column] = cosine * below - sine * above;
      }
    }
    this.residualSquares += (incoming[this.parameters] as number) ** 2;
    this.observations += 1;
  }

  /** Whether each column has so far a part of its own: more than 1e-10 of its length, well above rounding. */
  isFullRank(): boolean {
    const width = this.parameters + 1;
    return this.#squares.every(
      (squares, term) => Math.abs(this.#rows[term * width + term] as number) > 1e-10 * Math.sqrt(squares),
    );
  }

  /** The fitted value at a row, R⁻ᵀx · z, and its leverage |R⁻ᵀx|². Ask only where {@link isFullRank}. */
  project(row: ArrayLike<number>): { readonly estimate: number; readonly leverage: number } {
    const width = this.parameters + 1;
    const solved = new Float64Array(this.parameters);
    let estimate = 0;
    let leverage = 0;
    for (let term = 0; term < this.parameters; term += 1) {
      let rest = row[term] as number;
      for (let before = 0; before < term; before += 1) {
        rest -= (this.#rows[before * width + term] as number) * (solved[before] as number);
      }
      const part = rest / (this.#rows[term * width + term] as number);
      solved[term] = part;
      estimate += part * (this.#rows[term * width + this.parameters] as number);
      leverage += part * part;
    }
    return { estimate, leverage };
  }
}
