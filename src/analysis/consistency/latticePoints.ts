import { seededRandom } from "../seededRandom.ts";

/** Points spread evenly over the unit cube, row by row. */
export interface LatticePoints {
  readonly count: number;
  readonly dimensions: number;
  readonly values: Float64Array;
}

/**
 * Generators g of Korobov's lattices {i(1, g, g², …)/n} for a prime n (Korobov 1959). They were found by trying all of
 * them for the least sum over 3, 5 and 7 dimensions of the logarithm of P₂, the worst error for smooth periodic
 * integrands (Sloan and Joe 1994, Lattice Methods for Multiple Integration, chapter 4; from memory).
 */
const generators: Readonly<Record<number, number>> = { 67: 13, 127: 44, 251: 66, 509: 63, 1021: 89, 2039: 653 };

export type LatticeSize = 67 | 127 | 251 | 509 | 1021 | 2039;

const SEED = 19590101;
const known = new Map<string, LatticePoints>();

/**
 * A shifted Korobov lattice, folded by the tent transform so that integrands need not be periodic (Hickernell 2002;
 * from memory). The shift is drawn from a fixed seed in whole numbers: every engine and every call has the same points,
 * none of them on the cube's edge.
 *
 * @throws {RangeError} for no dimension
 */
export function latticePoints(count: LatticeSize, dimensions: number): LatticePoints {
  if (!(Number.isInteger(dimensions) && dimensions >= 1)) {
    throw new RangeError(`latticePoints requires at least one dimension; got ${dimensions}`);
  }
  const key = `${count} ${dimensions}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const random = seededRandom(SEED);
  const values = new Float64Array(count * dimensions);
  let multiple = 1;
  for (let dimension = 0; dimension < dimensions; dimension += 1) {
    const shift = (random.bits() + 0.5) / 4294967296;
    for (let point = 0; point < count; point += 1) {
      const place = ((point * multiple) % count) / count + shift;
      const inside = place - Math.floor(place);
      values[point * dimensions + dimension] = inside < 0.5 ? 2 * inside : 2 - 2 * inside;
    }
    multiple = (multiple * (generators[count] as number)) % count;
  }
  const points = { count, dimensions, values };
  known.set(key, points);
  return points;
}
