/** How many runs a chart goes until it signals, counted up to and with the run that does. */
export interface RunLengthDistribution {
  /** Average run length. */
  readonly mean: number;
  /** Chance that none of the first t runs signals, t from 0 (where it is 1). */
  readonly survival: Float64Array;
  /** From the last entry on each further run keeps this share of what was left. */
  readonly tailRatio: number;
}

/** Runs after which a chain that has still not settled is taken as it stands. */
const mostSteps = 20_000;

/**
 * The distribution from one step after another: `advance` returns the chance of no signal after one run, two runs, and
 * so on. Every chart here forgets its start, after which each run keeps the same share; once that share stands still
 * to ten digits of what it loses, the rest is a geometric series.
 */
export function settleRunLength(advance: () => number, leastSteps = 12): RunLengthDistribution {
  const survival = [1];
  let sum = 1;
  let ratio = 0;
  let still = 0;
  while (still < 4 && survival.length < mostSteps) {
    const before = survival[survival.length - 1] as number;
    const now = advance();
    survival.push(now);
    sum += now;
    if (!(now > 1e-300)) break;
    const next = now / before;
    const settled = Math.abs(next - ratio) <= 1e-10 * Math.abs(1 - next) + 5e-16;
    still = settled && survival.length > leastSteps ? still + 1 : 0;
    ratio = next;
  }
  const last = survival[survival.length - 1] as number;
  // A chart that loses less than the arithmetic can show is given the smallest loss that it can.
  const tailRatio = last > 1e-300 ? Math.min(ratio, 1 - 2 ** -52) : 0;
  return { mean: sum + (last * tailRatio) / (1 - tailRatio), survival: Float64Array.from(survival), tailRatio };
}

/** Chance that none of the first `runs` runs signals. */
export function chanceOfNoSignal({ survival, tailRatio }: RunLengthDistribution, runs: number): number {
  if (!(runs >= 0)) throw new RangeError(`chanceOfNoSignal requires 0 runs or more; got ${runs}`);
  const whole = Math.floor(runs);
  const last = survival.length - 1;
  return whole <= last ? (survival[whole] as number) : (survival[last] as number) * tailRatio ** (whole - last);
}

/**
 * The least number of runs by which the chart has signalled with a chance of at least `p`: for a shift of known size the
 * 95 % point says by when it should have been seen.
 *
 * @throws RangeError for p not between 0 and 1
 */
export function runLengthQuantile(distribution: RunLengthDistribution, p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`runLengthQuantile requires a probability between 0 and 1; got ${p}`);
  const { survival, tailRatio } = distribution;
  const within = survival.findIndex((left) => left <= 1 - p);
  if (within >= 0) return within;
  const last = survival.length - 1;
  return last + Math.max(1, Math.ceil(Math.log((1 - p) / (survival[last] as number)) / Math.log(tailRatio)));
}

/**
 * Chances of 0, 1, 2 … signals in `runs` runs, if the chart starts anew after each (a renewal process): the last entry
 * is the first count whose chance of being passed is below 1e-6.
 *
 * @throws RangeError for runs that are not a whole number of 0 or more
 */
export function signalCountChances(distribution: RunLengthDistribution, runs: number): Float64Array {
  if (!(Number.isInteger(runs) && runs >= 0)) {
    throw new RangeError(`signalCountChances requires a whole number of runs; got ${runs}`);
  }
  const left = Float64Array.from({ length: runs + 1 }, (_, t) => chanceOfNoSignal(distribution, t));
  const chances: number[] = [];
  // now[t]: chance that the k-th signal comes exactly at run t; k = 0 is the start.
  let now = new Float64Array(runs + 1);
  now[0] = 1;
  let passed = 1;
  while (passed >= 1e-6 && chances.length <= runs) {
    let chance = 0;
    for (let t = 0; t <= runs; t += 1) chance += (now[t] as number) * (left[runs - t] as number);
    chances.push(chance);
    passed -= chance;
    const next = new Float64Array(runs + 1);
    for (let t = 0; t < runs; t += 1) {
      const weight = now[t] as number;
      if (weight < 1e-15) continue;
      for (let step = 1; t + step <= runs; step += 1) {
        next[t + step] = (next[t + step] as number) + weight * ((left[step - 1] as number) - (left[step] as number));
      }
    }
    now = next;
  }
  return Float64Array.from(chances);
}

/** The least number of signals that `runs` runs stay at or under with a chance of at least `p`. */
export function signalCountQuantile(distribution: RunLengthDistribution, runs: number, p: number): number {
  let sum = 0;
  const chances = signalCountChances(distribution, runs);
  const found = chances.findIndex((chance) => {
    sum += chance;
    return sum >= p;
  });
  return found >= 0 ? found : chances.length;
}
