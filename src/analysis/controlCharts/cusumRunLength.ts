import { normalCdf } from "../distributions.ts";
import { gaussLegendre } from "../gaussLegendre.ts";
import { chanceOfNoSignal, type RunLengthDistribution, settleRunLength } from "./runLengthDistribution.ts";
import { requireStandardised, type Standardised } from "./runRuleRunLength.ts";

/** Cumulative sums: reference k and decision h, in sigma. */
export interface CusumDesign {
  readonly reference: number;
  readonly decision: number;
}

/**
 * Run length of the upper cumulative sum alone, from 0, by Page's integral equation (1954, Biometrika 41, 100–115; from
 * memory) on Gauss–Legendre nodes of 0 to h, with the chance of standing at 0 exactly as one state more.
 *
 * @throws RangeError for a negative reference or a decision that is not positive
 */
export function oneSidedCusumRunLength(design: CusumDesign, at: Standardised, nodeCount = 40): RunLengthDistribution {
  const { reference, decision } = design;
  requireStandardised(at, "oneSidedCusumRunLength");
  if (!(reference >= 0 && decision > 0)) {
    throw new RangeError(`oneSidedCusumRunLength requires k of 0 or more and h above 0; got ${reference}, ${decision}`);
  }
  const { shift, spread } = at;
  // Nodes must lie closer than the density is wide.
  const count = Math.max(nodeCount, Math.min(400, Math.ceil((6 * decision) / spread)));
  const { nodes, weights } = gaussLegendre(count);
  const places = [0, ...Array.from(nodes, (node) => (decision * (node + 1)) / 2)];
  const size = count + 1;
  const matrix = new Float64Array(size * size);
  places.forEach((from, i) => {
    matrix[i * size] = normalCdf((reference - from - shift) / spread);
    for (let j = 1; j < size; j += 1) {
      const z = ((places[j] as number) + reference - from - shift) / spread;
      matrix[i * size + j] =
        (((weights[j - 1] as number) * decision) / 2 / spread / Math.sqrt(2 * Math.PI)) * Math.exp((-z * z) / 2);
    }
  });
  let now = new Float64Array(size);
  let following = new Float64Array(size);
  now[0] = 1;
  return settleRunLength(() => {
    following.fill(0);
    for (let i = 0; i < size; i += 1) {
      const weight = now[i] as number;
      for (let j = 0; j < size; j += 1) {
        following[j] = (following[j] as number) + weight * (matrix[i * size + j] as number);
      }
    }
    [now, following] = [following, now];
    return now.reduce((sum, value) => sum + value, 0);
  });
}

/**
 * Run length of both sums: 1/A = 1/A(upper) + 1/A(lower), exact for the mean where both sides have the same k and h (Van
 * Dobben de Bruyn 1968, Cumulative Sum Tests; from memory). The distribution is that of the sooner of two unrelated
 * sums, which is close but not exact, stretched so that its tail gives the exact mean.
 */
export function cusumRunLength(design: CusumDesign, at: Standardised): RunLengthDistribution {
  const upper = oneSidedCusumRunLength(design, at);
  const lower = oneSidedCusumRunLength(design, { ...at, shift: -at.shift });
  const mean = 1 / (1 / upper.mean + 1 / lower.mean);
  const steps = Math.max(upper.survival.length, lower.survival.length);
  const survival = Float64Array.from(
    { length: steps },
    (_, runs) => chanceOfNoSignal(upper, runs) * chanceOfNoSignal(lower, runs),
  );
  const head = survival.reduce((sum, value) => sum + value, 0);
  const last = survival[steps - 1] as number;
  const tail = Math.max(0, mean - head);
  return { mean, survival, tailRatio: tail / (tail + last) || 0 };
}
