import { allSteps } from "./allSteps.ts";
import { type SeededRandom, seededRandom } from "./seededRandom.ts";

/** Consecutive residuals whose level stands clear of the rest; `start` and `end` are indices, both inclusive. */
export interface UnusualStretch {
  readonly start: number;
  readonly end: number;
  readonly mean: number;
  /** The mean's distance from that of the rest, in its own standard errors if neighbours were unrelated. */
  readonly standardised: number;
}

const shortest = 4;
const permutations = 999;
/** With this many shuffles at or above what was seen, p can no longer fall below 0.01. */
const tooMany = 9;
const mostStretches = 5;
/** Residuals from fits agree between engines to about 1e-12; a tie must be a tie in both. */
const tieTolerance = 1e-9;

/**
 * Finds stretches of residuals, in time order, that lie together above or below the rest: a slipping fan belt shows so.
 *
 * The statistic is the largest |Σ(r − r̄)| √(n / (L (n − L))) over windows of L consecutive residuals, L from 4 to half
 * of them, on a grid of lengths about a third apart: the likelihood-ratio statistic of one stretch of another level
 * (Levin and Kline 1985, Statistics in Medicine 4, 469–488; from memory). It is judged against 999 seeded shuffles of the same
 * residuals, which asks exactly whether their *order* is unusual, whatever their distribution; a single outlier does
 * as well in any order and so raises nothing. A stretch counts where p < 0.01. Its ends are then moved one by one while
 * the statistic grows, it is set aside, and the rest is searched again, until nothing stands out or five are found.
 *
 * Residuals that are related throughout, like those of a season that no predictor knows, are stretches by this test;
 * read it beside their lag-1 autocorrelation.
 *
 * `standardDeviation` scales what is reported, not what is found.
 *
 * @returns in time order; empty where fewer than 12 residuals stand to be judged
 * @throws RangeError for residuals that are not finite
 */
export function unusualStretch(residuals: ArrayLike<number>, standardDeviation: number): readonly UnusualStretch[] {
  return allSteps(searchStretches(residuals, standardDeviation));
}

/**
 * {@link unusualStretch} a few milliseconds at a time, for whoever wants to hear of other things meanwhile or to give up.
 *
 * @throws RangeError as it does, with the first step
 */
export function* searchStretches(
  residuals: ArrayLike<number>,
  standardDeviation: number,
): Generator<void, readonly UnusualStretch[]> {
  const series = Float64Array.from(residuals);
  const broken = series.findIndex((residual) => !Number.isFinite(residual));
  if (broken >= 0) throw new RangeError(`unusualStretch requires finite residuals; got another at ${broken}`);
  if (!(standardDeviation > 0)) return [];
  const random = seededRandom(20_261_031);
  const taken = new Uint8Array(series.length);
  const found: UnusualStretch[] = [];
  while (found.length < mostStretches) {
    const rest = withoutTaken(series, taken);
    if (rest.values.length < 3 * shortest) break;
    const best = widest(rest.values, rest.runs);
    if (best === null || !(yield* standsOut(rest, best.statistic, random))) break;
    const { from, to } = adjustEnds(rest, best);
    const start = rest.at[from] as number;
    const end = rest.at[to - 1] as number;
    taken.fill(1, start, end + 1);
    const mean = series.subarray(start, end + 1).reduce((sum, value) => sum + value, 0) / (end + 1 - start);
    found.push({ start, end, mean, standardised: statisticOf(rest.values, from, to) / standardDeviation });
  }
  return found.sort((a, b) => a.start - b.start);
}

/** The residuals not yet set aside: their values, where they stood, and the unbroken runs that windows must stay in. */
interface Rest {
  readonly values: Float64Array;
  readonly at: Int32Array;
  readonly runs: readonly { readonly from: number; readonly to: number }[];
}

interface Window {
  readonly from: number;
  /** Exclusive. */
  readonly to: number;
  readonly statistic: number;
}

function withoutTaken(series: Float64Array, taken: Uint8Array): Rest {
  const at = Int32Array.from(series.keys()).filter((index) => taken[index] === 0);
  const runs: { from: number; to: number }[] = [];
  at.forEach((index, place) => {
    const last = runs.at(-1);
    if (last && at[place - 1] === index - 1) last.to = place + 1;
    else runs.push({ from: place, to: place + 1 });
  });
  const values = Float64Array.from(at, (index) => series[index] as number);
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
  return { values: values.map((value) => value - centre), at, runs };
}

/** 4, 5, 6, 8, 10, 13, 17 … up to half of `count`. */
function lengthsFor(count: number): number[] {
  const lengths: number[] = [];
  for (let length = shortest; length <= count / 2; length += Math.max(1, Math.floor(length / 3))) lengths.push(length);
  return lengths;
}

function widest(values: Float64Array, runs: Rest["runs"]): Window | null {
  const count = values.length;
  const sums = new Float64Array(count + 1);
  for (let place = 0; place < count; place += 1) sums[place + 1] = (sums[place] as number) + (values[place] as number);
  let best: Window | null = null;
  for (const length of lengthsFor(count)) {
    let most = -1;
    let mostFrom = -1;
    for (const run of runs) {
      for (let from = run.from; from + length <= run.to; from += 1) {
        const size = Math.abs((sums[from + length] as number) - (sums[from] as number));
        if (size > most) {
          most = size;
          mostFrom = from;
        }
      }
    }
    const statistic = most * weightOf(length, count);
    if (mostFrom >= 0 && (best === null || statistic > best.statistic)) {
      best = { from: mostFrom, to: mostFrom + length, statistic };
    }
  }
  return best;
}

function weightOf(length: number, count: number): number {
  return Math.sqrt(count / (length * (count - length)));
}

/** Rounding aside, a window that falls short of what is needed by this share does not reach it. */
const surelyShort = 1 - 1e-12;

/** Whether any window is as unusual as `threshold`: stops at the first, and passes over lengths at which none can be. */
function reaches(values: Float64Array, runs: Rest["runs"], sums: Float64Array, threshold: number): boolean {
  const count = values.length;
  let [lowest, highest, sum] = [0, 0, 0];
  for (let place = 0; place < count; place += 1) {
    sum += values[place] as number;
    sums[place + 1] = sum;
    if (sum < lowest) lowest = sum;
    if (sum > highest) highest = sum;
  }
  for (const length of lengthsFor(count)) {
    const weight = weightOf(length, count);
    const needed = (threshold / weight) * surelyShort;
    if (highest - lowest < needed) continue;
    for (const run of runs) {
      for (let from = run.from; from + length <= run.to; from += 1) {
        const size = Math.abs((sums[from + length] as number) - (sums[from] as number));
        if (size >= needed && size * weight >= threshold) return true;
      }
    }
  }
  return false;
}

const shufflesAtATime = 50;

function* standsOut(rest: Rest, seen: number, random: SeededRandom): Generator<void, boolean> {
  const shuffled = rest.values.slice();
  const sums = new Float64Array(shuffled.length + 1);
  let asLarge = 0;
  for (let round = 0; round < permutations; round += 1) {
    if (round % shufflesAtATime === 0) yield;
    for (let place = shuffled.length - 1; place > 0; place -= 1) {
      const other = random.below(place + 1);
      const held = shuffled[place] as number;
      shuffled[place] = shuffled[other] as number;
      shuffled[other] = held;
    }
    if (reaches(shuffled, rest.runs, sums, seen * (1 - tieTolerance))) asLarge += 1;
    if (asLarge >= tooMany) return false;
  }
  return true;
}

/** Signed distance of the window's mean from that of the rest, over its standard error for residuals of spread 1. */
function statisticOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let place = from; place < to; place += 1) sum += values[place] as number;
  return sum * weightOf(to - from, values.length);
}

/** Moves either end by one while the statistic grows, inside the run and between the shortest and half of all. */
function adjustEnds(rest: Rest, stretch: Window): { readonly from: number; readonly to: number } {
  const run = rest.runs.find(({ from, to }) => stretch.from >= from && stretch.to <= to) ?? stretch;
  let { from, to } = stretch;
  let best = Math.abs(statisticOf(rest.values, from, to));
  for (;;) {
    const moved = [
      [from - 1, to],
      [from + 1, to],
      [from, to - 1],
      [from, to + 1],
    ] as const;
    let next: readonly [number, number] | null = null;
    for (const [start, end] of moved) {
      const length = end - start;
      if (start < run.from || end > run.to || length < shortest || length > rest.values.length / 2) continue;
      const statistic = Math.abs(statisticOf(rest.values, start, end));
      if (statistic > best * (1 + tieTolerance)) {
        best = statistic;
        next = [start, end];
      }
    }
    if (next === null) return { from, to };
    [from, to] = next;
  }
}
