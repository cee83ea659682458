import { studentTQuantile } from "../distributions.ts";
import { noncentralTUpperTail } from "./noncentralT.ts";

/** What a trial is asked for. */
export interface TrialDemand {
  /** The difference that is to be told, in the unit of `spread`. */
  readonly difference: number;
  /** Standard deviation between runs, what the model explains taken out. */
  readonly spread: number;
  /** The chance that a difference of that size is told. */
  readonly power: number;
  /** Of the two-sided test; 0.05 unless said otherwise. */
  readonly level?: number;
}

const usualLevel = 0.05;
/** A trial of more runs than this is not one that a small house can make. */
const mostRuns = 100_000;

/**
 * The chance that a two-sided two-sample t test with `runs` on each side tells a difference of that size, and tells it the
 * right way round: R's `power.t.test` unless it is asked to be strict. `runs` need not be whole.
 *
 * @throws RangeError for fewer than two runs a side, or a spread or difference that is not positive
 */
export function trialPower(
  runs: number,
  { difference, spread, level = usualLevel }: Omit<TrialDemand, "power">,
): number {
  if (!(runs >= 1.5)) throw new RangeError(`trialPower requires 2 runs a side; got ${runs}`);
  requirePositive(difference, spread);
  return powerAt(difference / (spread * Math.sqrt(2 / runs)), 2 * runs - 2, level);
}

/**
 * Runs needed on each side, not rounded; round up. Power grows with every run: the place where it meets the wanted one is
 * closed in on by false position on the logarithm of the runs (the Illinois form, which cannot stall; from memory).
 *
 * @returns null where more than 100 000 would be needed
 * @throws RangeError for a power outside 0 to 1, or a spread or difference that is not positive
 */
export function runsEachSide({ power, ...demand }: TrialDemand): number | null {
  requirePositive(demand.difference, demand.spread);
  if (!(power > 0 && power < 1)) throw new RangeError(`runsEachSide requires a power between 0 and 1; got ${power}`);
  const over = (logRuns: number): number => trialPower(Math.exp(logRuns), demand) - power;
  let [low, high] = [Math.log(2), Math.log(4)];
  let [under, above] = [over(low), over(high)];
  if (under >= 0) return 2;
  while (above < 0) {
    [low, under] = [high, above];
    high += Math.LN2;
    if (Math.exp(high) > mostRuns) return null;
    above = over(high);
  }
  let last = 0;
  for (let round = 0; round < 60 && high - low > 1e-12; round += 1) {
    const middle = low - (under * (high - low)) / (above - under);
    const found = over(middle);
    if (Math.abs(found) < 1e-13) return Math.exp(middle);
    if (found < 0) {
      [low, under] = [middle, found];
      if (last < 0) above /= 2;
    } else {
      [high, above] = [middle, found];
      if (last > 0) under /= 2;
    }
    last = found;
  }
  return Math.exp(high);
}

/** A comparison as it stands, which more runs on one side would sharpen. */
export interface StandingComparison {
  readonly runsBefore: number;
  readonly runsAfter: number;
  /** Of the difference, as the comparison has it now: with all that adjusting and related neighbours cost. */
  readonly standardError: number;
  readonly degreesOfFreedom: number;
}

/** More runs than this after a change are not waited for. */
const mostWaitedFor = 400;

/**
 * How many more runs after a change would tell a difference of that size, the runs before it being what they are. The error
 * is taken to shrink as √(1/before + 1/after).
 *
 * @returns null where the runs before are too few for any number after to do, or more than 400 would be needed
 * @throws RangeError for a difference or an error that is not positive, or a side without runs
 */
export function moreRunsAfter(
  { runsBefore, runsAfter, standardError, degreesOfFreedom }: StandingComparison,
  difference: number,
  power: number,
  level = usualLevel,
): number | null {
  requirePositive(difference, standardError);
  if (!(runsBefore >= 1 && runsAfter >= 1)) {
    throw new RangeError(`moreRunsAfter requires runs on both sides; got ${runsBefore} and ${runsAfter}`);
  }
  const now = 1 / runsBefore + 1 / runsAfter;
  const tells = (more: number): boolean => {
    const error = standardError * Math.sqrt((1 / runsBefore + 1 / (runsAfter + more)) / now);
    return powerAt(difference / error, degreesOfFreedom + more, level) >= power;
  };
  if (tells(0)) return 0;
  if (!tells(mostWaitedFor)) return null;
  let [low, high] = [0, mostWaitedFor];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (tells(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function powerAt(ncp: number, df: number, level: number): number {
  return noncentralTUpperTail(studentTQuantile(1 - level / 2, df), df, ncp);
}

function requirePositive(difference: number, spread: number): void {
  if (!(difference > 0 && spread > 0 && Number.isFinite(difference / spread))) {
    throw new RangeError(`a trial requires a positive difference and spread; got ${difference} and ${spread}`);
  }
}
