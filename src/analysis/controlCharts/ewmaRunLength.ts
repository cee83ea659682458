import { barycentricWeights, gaussLegendre } from "../gaussLegendre.ts";
import { type RunLengthDistribution, settleRunLength } from "./runLengthDistribution.ts";
import { requireStandardised, type Standardised } from "./runRuleRunLength.ts";
import type { ZoneChain } from "./zoneChain.ts";

/** A running weighted mean with its limits. */
export interface EwmaDesign {
  readonly weight: number;
  readonly limit: number;
  /** Level limits from the start, as in published tables; else they widen from the first run as `ewma` draws them. */
  readonly steady?: boolean;
}

/** Values further than this many spreads from their mean come once in 10¹⁷. */
const reachInSpreads = 8.5;
const panelNodes = 10;
/** Variance of the mean this close to its final one, as a share of it, is taken to have arrived: no run length feels the rest. */
const arrived = 1e-4;

/**
 * Run length of the running weighted mean together with any zone rules (a chain without edges for the mean alone).
 *
 * The chance of no signal, as a function of where the mean stands, obeys an integral equation over the limits (Crowder
 * 1987, Technometrics 29, 401–407; from memory). It is solved by collocation: the function is carried by its values at
 * Gauss–Legendre nodes of the limits of the day, and integrated against the normal density of the next value zone by zone,
 * cut where the mean would leave its limits, in panels of ten nodes. Iterating it from the start gives the whole
 * distribution. For the mean alone six digits stand; the cuts that zone rules make leave about 1 part in 1,000.
 *
 * @throws RangeError for a weight outside 0 to 1 or a limit that is not positive
 */
export function ewmaRunLength(
  design: EwmaDesign,
  chain: ZoneChain,
  at: Standardised,
  leastNodes = 24,
): RunLengthDistribution {
  const { weight, limit, steady = false } = design;
  requireStandardised(at, "ewmaRunLength");
  if (!(weight > 0 && weight <= 1 && limit > 0)) {
    throw new RangeError(`ewmaRunLength requires a weight up to 1 and a positive limit; got ${weight} and ${limit}`);
  }
  const finalReach = limit * Math.sqrt(weight / (2 - weight));
  // Nodes must lie closer than one value moves the mean: with twice as many per limit as that, six digits stand.
  const nodeCount = Math.min(150, Math.max(leastNodes, Math.ceil((2 * finalReach) / (weight * at.spread))));
  const size = chain.states * nodeCount;
  let now = new Float64Array(size);
  let following = new Float64Array(size);
  let matrices: Float64Array[] = [];
  let decay = 1;
  let reachBefore = 0;
  let level = false;
  let runs = 0;
  return settleRunLength(
    () => {
      runs += 1;
      decay *= (1 - weight) ** 2;
      if (!level) {
        const reach = steady || decay < arrived ? finalReach : finalReach * Math.sqrt(1 - decay);
        // The first step starts from 0 alone, the second from the first day's limits; level once two days' are the same.
        matrices = transition({ weight, reachBefore, reach, nodeCount, first: runs === 1 }, chain, at);
        level = runs > 1 && reach === finalReach && reachBefore === finalReach;
        reachBefore = reach;
      }
      following.fill(0);
      const sources = runs === 1 ? 1 : nodeCount;
      for (let state = 0; state < chain.states; state += 1) {
        for (let zone = 0; zone < chain.zones; zone += 1) {
          const to = chain.next[state * chain.zones + zone] as number;
          if (to < 0) continue;
          const matrix = matrices[zone] as Float64Array;
          for (let i = 0; i < sources; i += 1) {
            const carried = runs === 1 ? (state === 0 ? 1 : 0) : (now[state * nodeCount + i] as number);
            if (carried === 0) continue;
            for (let j = 0; j < nodeCount; j += 1) {
              following[to * nodeCount + j] =
                (following[to * nodeCount + j] as number) + carried * (matrix[i * nodeCount + j] as number);
            }
          }
        }
      }
      [now, following] = [following, now];
      return now.reduce((sum, value) => sum + value, 0);
    },
    Math.ceil(Math.log(arrived) / (2 * Math.log1p(-Math.min(weight, 0.999999)))) + 2,
  );
}

interface Step {
  readonly weight: number;
  readonly reachBefore: number;
  readonly reach: number;
  readonly nodeCount: number;
  readonly first: boolean;
}

/** For each zone: row i, column j is the integral of Lagrange polynomial j over that zone's values, from node i. */
function transition(step: Step, chain: ZoneChain, { shift, spread }: Standardised): Float64Array[] {
  const { weight, reachBefore, reach, nodeCount, first } = step;
  const quadrature = gaussLegendre(nodeCount);
  const barycentric = barycentricWeights(quadrature);
  const panel = gaussLegendre(panelNodes);
  const rows = first ? 1 : nodeCount;
  const terms = new Float64Array(nodeCount);
  return Array.from({ length: chain.zones }, (_, zone) => {
    const matrix = new Float64Array(rows * nodeCount);
    if (chain.next.every((to, at) => at % chain.zones !== zone || to < 0)) return matrix;
    for (let i = 0; i < rows; i += 1) {
      const carried = first ? 0 : (1 - weight) * reachBefore * (quadrature.nodes[i] as number);
      const low = Math.max(
        chain.edges[zone - 1] ?? -Infinity,
        (-reach - carried) / weight,
        shift - reachInSpreads * spread,
      );
      const high = Math.min(chain.edges[zone] ?? Infinity, (reach - carried) / weight, shift + reachInSpreads * spread);
      if (!(high > low)) continue;
      const panels = Math.ceil((high - low) / (2.5 * spread));
      const half = (high - low) / panels / 2;
      for (let p = 0; p < panels; p += 1) {
        for (let q = 0; q < panelNodes; q += 1) {
          const x = low + half * (2 * p + 1 + (panel.nodes[q] as number));
          const z = (x - shift) / spread;
          const mass =
            (half * (panel.weights[q] as number) * Math.exp((-z * z) / 2)) / (spread * Math.sqrt(2 * Math.PI));
          const place = (carried + weight * x) / reach;
          let sum = 0;
          let exact = -1;
          for (let j = 0; j < nodeCount; j += 1) {
            const distance = place - (quadrature.nodes[j] as number);
            if (distance === 0) exact = j;
            const term = (barycentric[j] as number) / distance;
            terms[j] = term;
            sum += term;
          }
          if (exact >= 0) {
            matrix[i * nodeCount + exact] = (matrix[i * nodeCount + exact] as number) + mass;
            continue;
          }
          const share = mass / sum;
          for (let j = 0; j < nodeCount; j += 1) {
            matrix[i * nodeCount + j] = (matrix[i * nodeCount + j] as number) + share * (terms[j] as number);
          }
        }
      }
    }
    return matrix;
  });
}
