import { describe, expect, it } from "vitest";
import { boxProbability } from "../../src/analysis/consistency/boxProbability.ts";
import { correlationFactor } from "../../src/analysis/consistency/pooledCorrelation.ts";

const INFINITE = Number.POSITIVE_INFINITY;

/** Lower triangle of a correlation matrix given row by row. */
function factorOf(rows: readonly (readonly number[])[]): Float64Array {
  const matrix = Float64Array.from(rows.flat());
  return correlationFactor(
    { matrix, shrunkBy: 0 },
    rows.map((_, at) => at),
  );
}

/** All correlations alike. */
const alike = (size: number, r: number): Float64Array =>
  factorOf(Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => (i === j ? 1 : r))));

const all = (size: number, value: number): number[] => new Array<number>(size).fill(value);

describe("boxProbability(low, high, factor, degreesOfFreedom)", () => {
  // Sheppard 1899: 1/4 + asin r / 2π for two, 1/8 + Σ asin r / 4π for three; a t of any degrees has the same orthants, since
  // stretching a ray does not leave it.
  it.each([
    [-0.8, 5],
    [0, 3],
    [0.3, 12],
    [0.7, INFINITE],
  ])("of a quadrant with r = %f and %f degrees agrees with 1/4 + asin r / 2π", (r, df) => {
    const chance = boxProbability([0, 0], all(2, INFINITE), alike(2, r), df);
    expect(chance).toLieWithin(0.25 + Math.asin(r) / (2 * Math.PI), 5e-4);
  });

  it("of an octant agrees with 1/8 + (asin r₁₂ + asin r₁₃ + asin r₂₃) / 4π", () => {
    const [a, b, c] = [0.5, 0.3, -0.2];
    const factor = factorOf([
      [1, a, b],
      [a, 1, c],
      [b, c, 1],
    ]);
    const exact = 0.125 + (Math.asin(a) + Math.asin(b) + Math.asin(c)) / (4 * Math.PI);
    expect(boxProbability(all(3, 0), all(3, INFINITE), factor, 7)).toLieWithin(exact, 5e-4);
    expect(boxProbability(all(3, 0), all(3, INFINITE), factor, INFINITE)).toLieWithin(exact, 5e-4);
  });

  it.each([2, 3, 4, 6])("of %i normals with r = 1/2 all below 0 agrees with 1/(n + 1)", (size) => {
    // Of n + 1 alike numbers each is as often the largest.
    const chance = boxProbability(all(size, Number.NEGATIVE_INFINITY), all(size, 0), alike(size, 0.5), INFINITE);
    expect(chance).toLieWithin(1 / (size + 1), 1e-3);
  });

  // Dunnett's two-sided 5 % points for k treatments against a control, whose differences have r = 1/2 (Dunnett 1964,
  // Biometrics 20, 482–491; from memory, printed to two decimals: a hundredth moves the chance by about 0.001).
  it.each([
    [2, 10, 2.57],
    [3, 10, 2.76],
    [5, 10, 2.99],
    [2, 20, 2.38],
    [5, 20, 2.73],
  ])("of |t| within Dunnett's point for %i treatments and %i degrees (%f) is 95 per cent", (size, df, point) => {
    expect(boxProbability(all(size, -point), all(size, point), alike(size, 0.5), df, 1021)).toLieWithin(0.95, 1.5e-3);
  });

  // Computed with SciPy 1.17.1: for equal correlations by quadrature over the common part and over the scale (quad, 400
  // Gauss-Legendre nodes), for the unequal ones multivariate_t.cdf (Genz) with 4,000,000 points, two seeds alike to 1e-7.
  it.each([
    [6, 0.3, 9, -2.2, 1.8, 0.6819553555],
    [3, 0.6, 5, -1, 1.5, 0.4937406976],
    [4, 0.6, INFINITE, -1, 1.5, 0.4866526764],
  ])("of %i variables with r = %f and %f degrees agrees with quadrature", (size, r, df, low, high, exact) => {
    expect(boxProbability(all(size, low), all(size, high), alike(size, r), df)).toLieWithin(exact, 1e-3);
    expect(boxProbability(all(size, low), all(size, high), alike(size, r), df, 2039)).toLieWithin(exact, 3e-4);
  });

  it("of three unequally related variables agrees with SciPy", () => {
    const factor = factorOf([
      [1, 0.5, 0.3],
      [0.5, 1, -0.2],
      [0.3, -0.2, 1],
    ]);
    expect(boxProbability([-1, -1.5, -2], [1, 2, 1.5], factor, 5)).toLieWithin(0.5264705, 3e-4);
  });
});
