import chiSquareQuantileOf from "@stdlib/stats-base-dists-chisquare-quantile";
import fCumulative from "@stdlib/stats-base-dists-f-cdf";
import fQuantileOf from "@stdlib/stats-base-dists-f-quantile";
import normalCumulative from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantileOf from "@stdlib/stats-base-dists-normal-quantile";
import tCumulative from "@stdlib/stats-base-dists-t-cdf";
import tQuantileOf from "@stdlib/stats-base-dists-t-quantile";

function requireShare(p: number, caller: string): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`${caller} requires a probability between 0 and 1; got ${p}`);
}

function requireDegreesOfFreedom(df: number, caller: string): void {
  if (!(df > 0)) throw new RangeError(`${caller} requires positive degrees of freedom; got ${df}`);
}

/** The value that a Student t with `df` degrees of freedom stays below with probability `p`. */
export function studentTQuantile(p: number, df: number): number {
  requireShare(p, "studentTQuantile");
  requireDegreesOfFreedom(df, "studentTQuantile");
  return tQuantileOf(p, df);
}

/**
 * The chance that a Student t with `df` degrees of freedom lies further from 0 than `t`, either side. Taken as twice
 * the lower tail at −|t|, never as 1 minus a number near 1, so that small values keep their digits.
 */
export function studentTTwoSidedP(t: number, df: number): number {
  requireDegreesOfFreedom(df, "studentTTwoSidedP");
  if (Number.isNaN(t)) throw new RangeError("studentTTwoSidedP requires a number; got NaN");
  return Number.isFinite(t) ? 2 * tCumulative(-Math.abs(t), df) : 0;
}

/** The chance that a Student t with `df` degrees of freedom stays below `t`. For an upper tail ask for `−t`. */
export function studentTCdf(t: number, df: number): number {
  requireDegreesOfFreedom(df, "studentTCdf");
  if (Number.isNaN(t)) throw new RangeError("studentTCdf requires a number; got NaN");
  if (!Number.isFinite(t)) return t > 0 ? 1 : 0;
  return tCumulative(t, df);
}

/** The value that an F with `d1` and `d2` degrees of freedom stays below with probability `p`. */
export function fQuantile(p: number, d1: number, d2: number): number {
  requireShare(p, "fQuantile");
  requireDegreesOfFreedom(Math.min(d1, d2), "fQuantile");
  return fQuantileOf(p, d1, d2);
}

/**
 * The chance that an F with `d1` and `d2` degrees of freedom exceeds `f`. If F has (d1, d2) degrees of freedom then
 * 1/F has (d2, d1), so the upper tail is the lower tail at 1/f with the degrees exchanged; nothing is subtracted from 1.
 */
export function fUpperTail(f: number, d1: number, d2: number): number {
  requireDegreesOfFreedom(Math.min(d1, d2), "fUpperTail");
  if (!(f >= 0)) throw new RangeError(`fUpperTail requires a value of 0 or more; got ${f}`);
  if (f === 0) return 1;
  return f === Number.POSITIVE_INFINITY ? 0 : fCumulative(1 / f, d2, d1);
}

/** The value that a chi-square with `df` degrees of freedom stays below with probability `p`. */
export function chiSquareQuantile(p: number, df: number): number {
  requireShare(p, "chiSquareQuantile");
  requireDegreesOfFreedom(df, "chiSquareQuantile");
  return chiSquareQuantileOf(p, df);
}

/**
 * The chance that a chi-square with `df` (a whole number) degrees of freedom exceeds `x`, as a finite sum of positive
 * terms (Abramowitz and Stegun 1964, 26.4.4 for odd and 26.4.5 for even degrees of freedom, from memory), so that a
 * small tail keeps its digits.
 */
export function chiSquareUpperTail(x: number, df: number): number {
  if (!(Number.isInteger(df) && df > 0)) {
    throw new RangeError(`chiSquareUpperTail requires a positive whole number of degrees of freedom; got ${df}`);
  }
  if (!(x >= 0)) throw new RangeError(`chiSquareUpperTail requires a value of 0 or more; got ${x}`);
  if (x === 0) return 1;
  if (x === Number.POSITIVE_INFINITY) return 0;
  const half = x / 2;
  const odd = df % 2 === 1;
  // Q(a + 1, h) = Q(a, h) + h^a e^-h / Γ(a + 1), from Q(1/2, h) = 2 Φ(−√2h) or Q(1, h) = e^-h.
  let tail = odd ? 2 * normalCdf(-Math.sqrt(x)) : Math.exp(-half);
  let term = odd ? (2 * Math.sqrt(half) * Math.exp(-half)) / Math.sqrt(Math.PI) : half * Math.exp(-half);
  for (let a = odd ? 1.5 : 2; a <= df / 2; a += 1) {
    tail += term;
    term *= half / a;
  }
  return tail;
}

/** The value that a standard normal stays below with probability `p`. */
export function normalQuantile(p: number): number {
  requireShare(p, "normalQuantile");
  return normalQuantileOf(p, 0, 1);
}

/** The chance that a standard normal stays below `z`. For an upper tail ask for `−z`. */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new RangeError("normalCdf requires a number; got NaN");
  return normalCumulative(z, 0, 1);
}
