import { normalCdf } from "../distributions.ts";
import { gaussLegendre } from "../gaussLegendre.ts";

const NODES = 96;

/**
 * The chance that a noncentral Student t, (Z + ncp)/√(V/df), exceeds `t`: the mean of Φ(ncp − t s) over the distribution of
 * s = √(V/df), whose density goes as s^(df − 1) exp(−df s²/2). Both integrals, over the same nodes, so that the constant
 * of the density falls out. The power of a t test is this tail at its critical value.
 *
 * @throws RangeError for degrees of freedom below 1, or a value that is not finite
 */
export function noncentralTUpperTail(t: number, df: number, ncp: number): number {
  if (!(df >= 1 && Number.isFinite(df))) {
    throw new RangeError(`noncentralTUpperTail requires 1 degree of freedom or more; got ${df}`);
  }
  if (!Number.isFinite(t) || !Number.isFinite(ncp)) {
    throw new RangeError(`noncentralTUpperTail requires finite values; got ${t} and ${ncp}`);
  }
  // The density peaks at √((df − 1)/df) and falls off at least as fast as a normal one with variance 1/(2 df).
  const peak = Math.sqrt((df - 1) / df);
  const reach = 9 / Math.sqrt(2 * df);
  const from = Math.max(0, peak - reach);
  const half = (peak + reach - from) / 2;
  const { nodes, weights } = gaussLegendre(NODES);
  const logDensity = (s: number): number => (df - 1) * Math.log(s) - (df * s * s) / 2;
  const highest = peak > 0 ? logDensity(peak) : 0;
  let mass = 0;
  let above = 0;
  nodes.forEach((node, i) => {
    const s = from + half * (1 + node);
    const density = (weights[i] as number) * Math.exp(logDensity(s) - highest);
    mass += density;
    above += density * normalCdf(ncp - t * s);
  });
  return above / mass;
}
