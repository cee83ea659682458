/** Nodes in (−1, 1), ascending, and weights of a quadrature that is exact for polynomials up to degree 2n − 1. */
export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const kept = new Map<number, Quadrature>();

/**
 * Gauss–Legendre quadrature with `count` nodes on (−1, 1): ∫f ≈ Σ wᵢ f(xᵢ). The nodes are the zeros of the Legendre
 * polynomial, found by Newton's method from cos(π(i − 1/4)/(n + 1/2)); the weights are 2/((1 − x²) P′ₙ(x)²)
 * (Abramowitz and Stegun 1964, 25.4.29; from memory). Kept by count, since the same few are asked for again and again.
 *
 * @throws RangeError for a count that is not a whole number from 1 to 500
 */
export function gaussLegendre(count: number): Quadrature {
  if (!(Number.isInteger(count) && count >= 1 && count <= 500)) {
    throw new RangeError(`gaussLegendre requires a whole number of nodes from 1 to 500; got ${count}`);
  }
  const known = kept.get(count);
  if (known) return known;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < Math.ceil(count / 2); i += 1) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let round = 0; round < 100; round += 1) {
      const { value, derivative } = legendre(count, x);
      slope = derivative;
      const move = value / derivative;
      x -= move;
      if (Math.abs(move) < 1e-15) break;
    }
    slope = legendre(count, x).derivative;
    const weight = 2 / ((1 - x * x) * slope * slope);
    nodes[i] = -x;
    nodes[count - 1 - i] = x;
    weights[i] = weight;
    weights[count - 1 - i] = weight;
  }
  if (count % 2 === 1) nodes[(count - 1) / 2] = 0;
  const quadrature = { nodes, weights };
  kept.set(count, quadrature);
  return quadrature;
}

function legendre(degree: number, x: number): { readonly value: number; readonly derivative: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k += 1) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return { value, derivative: (degree * (x * value - before)) / (x * x - 1) };
}

/**
 * Weights of barycentric Lagrange interpolation through Gauss–Legendre nodes, up to a common factor:
 * (−1)ⁱ √((1 − xᵢ²) wᵢ) (Wang and Xiang 2012, Mathematics of Computation 81, 861–877; from memory).
 */
export function barycentricWeights({ nodes, weights }: Quadrature): Float64Array {
  return nodes.map((x, i) => (i % 2 === 0 ? 1 : -1) * Math.sqrt((1 - x * x) * (weights[i] as number)));
}
