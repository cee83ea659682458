import { gaussLegendre, type Quadrature } from "../gaussLegendre.ts";
import { type RunLengthDistribution, settleRunLength } from "./runLengthDistribution.ts";
import { requireStandardised, type Standardised, zoneChances } from "./runRuleRunLength.ts";
import type { ZoneChain } from "./zoneChain.ts";

/** Values of one trend: the sixth that rises, or falls, fires. */
const length = 6;
const nodeCount = 10;

/**
 * Run length of "6 steadily rising or falling" together with any zone rules (pass a chain without edges for the trend
 * alone, which then no shift touches).
 *
 * The state is what the zone rules remember, how long the values have risen or fallen, and the last value. On the scale
 * of its own cumulative chance the value is uniform, so that the density of the last value obeys
 * p′(u) = ∫ p over u₀ < u for a rise and u₀ > u for a fall, in each zone a smooth function: it is carried at 10
 * Gauss–Legendre nodes a zone, its integral from the left edge by the exact integral of the interpolating polynomial.
 */
export function trendRunLength(chain: ZoneChain, at: Standardised): RunLengthDistribution {
  requireStandardised(at, "trendRunLength");
  const quadrature = gaussLegendre(nodeCount);
  const moves = trendMoves(chain);
  const widths = zoneChances(chain, at);
  const partial = integralFromLeft(quadrature);
  const size = moves.count * nodeCount;
  let now = new Float64Array(size);
  let following = new Float64Array(size);
  const toNodes = new Float64Array(nodeCount);
  let first = true;
  const mass = (density: Float64Array, place: number): number => {
    let sum = 0;
    for (let i = 0; i < nodeCount; i += 1) {
      sum += (quadrature.weights[i] as number) * (density[place * nodeCount + i] as number);
    }
    return (sum * (widths[moves.zoneOf[place] as number] as number)) / 2;
  };
  return settleRunLength(() => {
    following.fill(0);
    if (first) {
      first = false;
      for (const place of moves.start) following.fill(1, place * nodeCount, (place + 1) * nodeCount);
    } else {
      for (let place = 0; place < moves.count; place += 1) {
        const total = mass(now, place);
        if (total === 0) continue;
        const zone = moves.zoneOf[place] as number;
        for (let i = 0; i < nodeCount; i += 1) {
          let sum = 0;
          for (let j = 0; j < nodeCount; j += 1) {
            sum += (partial[i * nodeCount + j] as number) * (now[place * nodeCount + j] as number);
          }
          toNodes[i] = (sum * (widths[zone] as number)) / 2;
        }
        for (let to = 0; to < chain.zones; to += 1) {
          const risen = moves.rise[place * chain.zones + to] as number;
          const fallen = moves.fall[place * chain.zones + to] as number;
          for (let i = 0; i < nodeCount; i += 1) {
            const below = to > zone ? total : to < zone ? 0 : (toNodes[i] as number);
            if (risen >= 0) following[risen * nodeCount + i] = (following[risen * nodeCount + i] as number) + below;
            if (fallen >= 0) {
              following[fallen * nodeCount + i] = (following[fallen * nodeCount + i] as number) + total - below;
            }
          }
        }
      }
    }
    [now, following] = [following, now];
    let left = 0;
    for (let place = 0; place < moves.count; place += 1) left += mass(now, place);
    return left;
  }, 24);
}

interface TrendMoves {
  readonly count: number;
  readonly zoneOf: Int32Array;
  /** Places that one value alone can lead to. */
  readonly start: readonly number[];
  /** rise[place × zones + zone]: the place after a higher value in that zone; −1 where there is none or a rule fires. */
  readonly rise: Int32Array;
  readonly fall: Int32Array;
}

const keptMoves = new WeakMap<ZoneChain, TrendMoves>();

/** Every reachable triple of chain state, zone of the last value, and trend: 1 alone, 2 to 5 risen, −2 to −5 fallen. */
function trendMoves(chain: ZoneChain): TrendMoves {
  const known = keptMoves.get(chain);
  if (known) return known;
  const ids = new Map<string, number>();
  const places: { readonly state: number; readonly zone: number; readonly trend: number }[] = [];
  const placeOf = (state: number, zone: number, trend: number): number => {
    const to = chain.next[state * chain.zones + zone] as number;
    if (to < 0 || Math.abs(trend) >= length) return -1;
    const key = `${to} ${zone} ${trend}`;
    const id = ids.get(key) ?? places.length;
    if (id === places.length) {
      ids.set(key, id);
      places.push({ state: to, zone, trend });
    }
    return id;
  };
  const start = Array.from({ length: chain.zones }, (_, zone) => placeOf(0, zone, 1)).filter((place) => place >= 0);
  const rise: number[] = [];
  const fall: number[] = [];
  for (let place = 0; place < places.length; place += 1) {
    const { state, zone, trend } = places[place] as (typeof places)[number];
    for (let to = 0; to < chain.zones; to += 1) {
      rise.push(to < zone ? -1 : placeOf(state, to, trend > 0 ? trend + 1 : 2));
      fall.push(to > zone ? -1 : placeOf(state, to, trend < 0 ? trend - 1 : -2));
    }
  }
  const moves: TrendMoves = {
    count: places.length,
    zoneOf: Int32Array.from(places, ({ zone }) => zone),
    start,
    rise: Int32Array.from(rise),
    fall: Int32Array.from(fall),
  };
  keptMoves.set(chain, moves);
  return moves;
}

/** Row i, column j: the integral from −1 to node i of the Lagrange polynomial that is 1 at node j. */
function integralFromLeft({ nodes, weights }: Quadrature): Float64Array {
  const matrix = new Float64Array(nodes.length * nodes.length);
  nodes.forEach((end, i) => {
    nodes.forEach((_, j) => {
      let sum = 0;
      nodes.forEach((node, q) => {
        const x = -1 + ((node + 1) * (end + 1)) / 2;
        let polynomial = 1;
        nodes.forEach((other, k) => {
          if (k !== j) polynomial *= (x - other) / ((nodes[j] as number) - other);
        });
        sum += (weights[q] as number) * polynomial;
      });
      matrix[i * nodes.length + j] = (sum * (end + 1)) / 2;
    });
  });
  return matrix;
}
