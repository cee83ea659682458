import { normalCdf, normalQuantile } from "../distributions.ts";
import type { Interval } from "../regressionFit.ts";
import { seededRandom } from "../seededRandom.ts";
import { quantile } from "../summary.ts";
import { foretell, type ScaledLimits, type Seen } from "./consistency.ts";
import type { SquaresAboutMean } from "./shrunkSpread.ts";

/** So that the 2.5 and 97.5 % points are draws themselves. */
const DRAWS = 399;
const SEED = 20_261_031;
const DRAWS_A_STEP = 20;
const LEVEL = 0.95;
/** A draw of every lot once is the estimate again but for rounding, which must not decide on which side of it it lies. */
const SAME = 1e-9;

/** Several lots' values of one measure as one: counts, means and squares put together (Chan, Golub and LeVeque 1983). */
export function together(parts: readonly Seen[]): Seen {
  let [count, mean, squares] = [0, 0, 0];
  for (const part of parts) {
    if (part.count === 0) continue;
    const sum = count + part.count;
    const apart = part.mean - mean;
    squares += part.squares + (apart * apart * count * part.count) / sum;
    mean += (apart * part.count) / sum;
    count = sum;
  }
  return { count, mean, squares };
}

/**
 * Intervals of a variety's two chances by drawing its lots anew, with replacement and from a fixed seed: batches of one
 * lot resemble each other, so that lots are what has been seen several times (Davison and Hinkley 1997, Bootstrap
 * Methods and their Application, 3.8; from memory). Limits, correlation and the other varieties' spread stay. The
 * percentiles are corrected for bias (Efron 1987, Journal of the American Statistical Association 82, 171–185, without
 * acceleration; from memory), since lots drawn twice scatter less than lots. A few milliseconds a step.
 *
 * @param lots one for each lot, each with what was seen of every measure
 * @param estimate the chances of all lots together
 * @param draws how often; fewer make the ends rougher
 * @returns null where no draw gives a forecast
 */
export function* drawLots(
  lots: readonly (readonly Seen[])[],
  others: readonly SquaresAboutMean[],
  limits: readonly ScaledLimits[],
  factor: ArrayLike<number>,
  estimate: { readonly onTarget: number; readonly even: number },
  draws = DRAWS,
): Generator<void, { readonly onTarget: Interval; readonly even: Interval } | null> {
  const random = seededRandom(SEED);
  const onTarget: number[] = [];
  const even: number[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    if (draw % DRAWS_A_STEP === 0) yield;
    const drawn = lots.map(() => lots[random.below(lots.length)] as readonly Seen[]);
    const seen = limits.map((_, at) => together(drawn.map((lot) => lot[at] as Seen)));
    const forecast = foretell(seen, others, limits, factor, 67);
    if (forecast === null) continue;
    onTarget.push(forecast.onTarget);
    even.push(forecast.even);
  }
  if (onTarget.length === 0) return null;
  return {
    onTarget: biasCorrected(onTarget, estimate.onTarget),
    even: biasCorrected(even, estimate.even),
  };
}

/** Percentiles moved by twice the distance, in normal deviates, of the estimate from the middle of the draws. */
function biasCorrected(draws: readonly number[], estimate: number): Interval {
  let below = 0;
  for (const draw of draws) below += draw < estimate - SAME ? 1 : draw <= estimate + SAME ? 0.5 : 0;
  const lean = normalQuantile((below + 0.5) / (draws.length + 1));
  const reach = normalQuantile(0.5 + LEVEL / 2);
  const at = (deviate: number): number => quantile(draws, normalCdf(2 * lean + deviate));
  // An estimate at the end of all draws would fall outside.
  return { estimate, low: Math.min(estimate, at(-reach)), high: Math.max(estimate, at(reach)) };
}
