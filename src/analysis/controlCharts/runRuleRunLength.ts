import { normalCdf } from "../distributions.ts";
import { type RunLengthDistribution, settleRunLength } from "./runLengthDistribution.ts";
import type { ZoneChain } from "./zoneChain.ts";

/** How standardised values are spread while a run length is counted: (value − chart's centre) / chart's sigma is normal with these. */
export interface Standardised {
  /** Mean, in the chart's sigma; 0 where nothing has shifted and the centre is known. */
  readonly shift: number;
  /** Standard deviation, in the chart's sigma; 1 where sigma is known. */
  readonly spread: number;
}

/** @throws RangeError for a shift that is not finite or a spread that is not positive */
export function requireStandardised({ shift, spread }: Standardised, caller: string): void {
  if (!(Number.isFinite(shift) && Number.isFinite(spread) && spread > 0)) {
    throw new RangeError(`${caller} requires a finite shift and a positive spread; got ${shift} and ${spread}`);
  }
}

/**
 * Average run length of "one beyond the limits" in closed form: 1 over the chance that a value lies beyond.
 *
 * @example beyondLimitsRunLength(3, { shift: 0, spread: 1 }) // 370.398
 */
export function beyondLimitsRunLength(multiplier: number, at: Standardised): number {
  requireStandardised(at, "beyondLimitsRunLength");
  if (!(multiplier > 0)) throw new RangeError(`beyondLimitsRunLength requires positive limits; got ${multiplier}`);
  return 1 / (normalCdf((-multiplier - at.shift) / at.spread) + normalCdf((at.shift - multiplier) / at.spread));
}

/** Chance of each zone of a chain, each from the nearer tail so that small ones keep their digits. */
export function zoneChances({ edges, zones }: ZoneChain, { shift, spread }: Standardised): Float64Array {
  return Float64Array.from({ length: zones }, (_, zone) => {
    const low = ((edges[zone - 1] ?? Number.NEGATIVE_INFINITY) - shift) / spread;
    const high = ((edges[zone] ?? Number.POSITIVE_INFINITY) - shift) / spread;
    return low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
  });
}

/**
 * Run length of any set of zone rules, exactly, by their Markov chain (`zoneChain`), started with nothing remembered.
 *
 * @throws RangeError for a chain with no rule
 */
export function zoneRunLength(chain: ZoneChain, at: Standardised): RunLengthDistribution {
  requireStandardised(at, "zoneRunLength");
  if (chain.edges.length === 0) throw new RangeError("zoneRunLength requires a chain with a rule; got none");
  const chances = zoneChances(chain, at);
  let now = new Float64Array(chain.states);
  let following = new Float64Array(chain.states);
  now[0] = 1;
  return settleRunLength(() => {
    following.fill(0);
    let left = 0;
    for (let state = 0; state < chain.states; state += 1) {
      const weight = now[state] as number;
      if (weight === 0) continue;
      for (let zone = 0; zone < chain.zones; zone += 1) {
        const to = chain.next[state * chain.zones + zone] as number;
        if (to < 0) continue;
        const moved = weight * (chances[zone] as number);
        following[to] = (following[to] as number) + moved;
        left += moved;
      }
    }
    [now, following] = [following, now];
    return left;
  });
}
