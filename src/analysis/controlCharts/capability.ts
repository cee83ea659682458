import { chiSquareQuantile, normalCdf, normalQuantile, studentTTwoSidedP } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { mean, sampleStandardDeviation } from "../summary.ts";
import { wilsonInterval } from "../wilsonInterval.ts";

/** What a measure must keep to, in its unit; either end may be open. */
export interface Specification {
  readonly low: number | null;
  readonly high: number | null;
}

/** How a process lies within its specification. */
export interface Capability {
  readonly count: number;
  readonly mean: number;
  /** Of all values, with n − 1: what a customer sees, within and between stretches. */
  readonly standardDeviation: number;
  /** (high − low)/6s with its interval; null where the specification is open on a side. */
  readonly cp: Interval | null;
  /** (mean − low)/3s; null where there is no low. */
  readonly cpkLow: number | null;
  readonly cpkHigh: number | null;
  /** The lesser of the two, or the only one, with Bissell's interval. */
  readonly cpk: Interval;
  /** Chance that the next value lies outside, with its interval. */
  readonly expectedOutside: Interval;
  /** Share of the values outside, with Wilson's interval, and their number. */
  readonly seenOutside: Interval;
  readonly seenOutsideCount: number;
}

/** A sample's size, mean and standard deviation. */
export interface SampleSummary {
  readonly count: number;
  readonly mean: number;
  readonly standardDeviation: number;
}

/**
 * Capability against a specification: Cp, one- and two-sided Cpk, the expected share outside and the share seen. It
 * supposes unrelated, about normal values from a process in control; a page says so where the chart signals.
 *
 * - Cpk's interval is Bissell's, Cpk ± z √(1/(9n) + Cpk²/(2(n − 1))) (1990, Applied Statistics 39, 331–340; through
 *   e-Handbook 6.1.6); Cp's is Cp √(χ²/(n − 1)) (e-Handbook 6.1.6).
 * - The expected share is that of the Student-t predictive distribution, mean + s √(1 + 1/n) t with n − 1 degrees of
 *   freedom. Its interval is that of the true share when the process mean is mean + z s′/√n and its spread s′ = s √((n − 1)/χ²)
 *   for independent normal z and chi-square: the distribution whose average the predictive one is, and for a
 *   specification with one end the exact interval of classical statistics.
 *
 * @returns null for fewer than 5 values or values that do not vary
 * @throws RangeError for a specification that is open on both sides or has its low end above the high
 */
export function capability(values: ArrayLike<number>, specification: Specification, level = 0.95): Capability | null {
  const { low, high } = specification;
  if (low === null && high === null) throw new RangeError("capability requires a specification; got one with no end");
  if (low !== null && high !== null && !(low < high)) {
    throw new RangeError(`capability requires a low end below the high one; got ${low} and ${high}`);
  }
  if (values.length < 5) return null;
  const summary = { count: values.length, mean: mean(values), standardDeviation: sampleStandardDeviation(values) };
  if (summary.standardDeviation === 0) return null;
  const seenOutsideCount = Array.from(values).filter(
    (value) => (low !== null && value < low) || (high !== null && value > high),
  ).length;
  return {
    ...summary,
    ...capabilityIndices(summary, specification, level),
    // Dear, and looked at in fewer places than the rest: worked out when it is read.
    get expectedOutside() {
      return expectedShareOutside(summary, specification, level);
    },
    seenOutside: wilsonInterval(seenOutsideCount, summary.count, level),
    seenOutsideCount,
  };
}

/** Cp and Cpk from a summary; see `capability`. */
export function capabilityIndices(
  { count, mean: centre, standardDeviation: s }: SampleSummary,
  { low, high }: Specification,
  level = 0.95,
): Pick<Capability, "cp" | "cpkLow" | "cpkHigh" | "cpk"> {
  const cpkLow = low === null ? null : (centre - low) / (3 * s);
  const cpkHigh = high === null ? null : (high - centre) / (3 * s);
  const estimate = Math.min(cpkLow ?? Number.POSITIVE_INFINITY, cpkHigh ?? Number.POSITIVE_INFINITY);
  const z = normalQuantile(0.5 + level / 2);
  const reach = z * Math.sqrt(1 / (9 * count) + estimate ** 2 / (2 * (count - 1)));
  let cp: Interval | null = null;
  if (low !== null && high !== null) {
    const width = (high - low) / (6 * s);
    const bound = (p: number): number => width * Math.sqrt(chiSquareQuantile(p, count - 1) / (count - 1));
    cp = { estimate: width, low: bound(0.5 - level / 2), high: bound(0.5 + level / 2) };
  }
  return { cp, cpkLow, cpkHigh, cpk: { estimate, low: estimate - reach, high: estimate + reach } };
}

/**
 * Equally likely spreads, and how many of the equally likely means go with each. From one spread to the next other means take
 * their turn: within 2 in 100 of the interval that all pairs would give, from a quarter of them.
 */
const spreadCells = 160;
const meanCells = 128;
const meansEach = 16;
/** Odd, so that a spread's turn takes every mean once in {@link turns} spreads, and neighbours' turns lie apart. */
const turnStep = 5;
const turns = meanCells / meansEach;

const keptShares = new Map<string, Interval>();

/**
 * The expected share outside with its interval; see `capability`. Kept by its arguments: a page asks again and again of the
 * same batches, whatever rules a chart has.
 */
export function expectedShareOutside(summary: SampleSummary, { low, high }: Specification, level = 0.95): Interval {
  const { count, mean: centre, standardDeviation } = summary;
  const key = JSON.stringify([count, centre, standardDeviation, low, high, level]);
  const share = keptShares.get(key) ?? shareOutside(summary, { low, high }, level);
  if (keptShares.size > 200) keptShares.clear();
  keptShares.set(key, share);
  return share;
}

/** Over equally likely pairs of mean and spread. */
function shareOutside(
  { count, mean: centre, standardDeviation: s }: SampleSummary,
  { low, high }: Specification,
  level: number,
): Interval {
  const predictive = s * Math.sqrt(1 + 1 / count);
  const below = low === null ? 0 : studentTLowerTail((low - centre) / predictive, count - 1);
  const above = high === null ? 0 : studentTLowerTail((centre - high) / predictive, count - 1);
  const deviates = Array.from({ length: meanCells }, (_, cell) => normalQuantile((cell + 0.5) / meanCells));
  const shares = new Float64Array(spreadCells * meansEach);
  for (let cell = 0; cell < spreadCells; cell += 1) {
    const spread = s * Math.sqrt((count - 1) / chiSquareQuantile((cell + 0.5) / spreadCells, count - 1));
    for (let i = 0; i < meansEach; i += 1) {
      const z = deviates[i * turns + ((cell * turnStep) % turns)] as number;
      const middle = centre + (z * spread) / Math.sqrt(count);
      const under = low === null ? 0 : normalCdf((low - middle) / spread);
      shares[cell * meansEach + i] = under + (high === null ? 0 : normalCdf((middle - high) / spread));
    }
  }
  shares.sort();
  const at = (p: number): number => shares[Math.min(shares.length - 1, Math.floor(p * shares.length))] as number;
  return { estimate: below + above, low: at(0.5 - level / 2), high: at(0.5 + level / 2) };
}

function studentTLowerTail(t: number, df: number): number {
  const tail = studentTTwoSidedP(t, df) / 2;
  return t < 0 ? tail : 1 - tail;
}
