import { comparePaired } from "../../analysis/comparePaired.ts";
import type { Guess, GuessComparison } from "../kilnHoursResult.ts";
import type { OneStep } from "./oneStep.ts";

/** Fewer shared loads than this do not rank anything. */
const FEWEST_SHARED_LOADS = 12;

/**
 * Ranks ways of guessing by their one-step-ahead errors on the loads that all of them could guess.
 *
 * @param actual hours of each load, in time order
 * @param byKind what each way expected of each load, in the same order
 * @returns null where too few loads were guessed by all
 */
export function compareGuesses(
  actual: readonly number[],
  byKind: ReadonlyMap<Guess["kind"], readonly OneStep[]>,
): GuessComparison | null {
  const shared = actual.map((_, i) => i).filter((i) => [...byKind.values()].every((guesses) => guesses[i] != null));
  if (shared.length < FEWEST_SHARED_LOADS || byKind.size === 0) return null;
  const judged = [...byKind].map(([kind, expected]) => {
    const errors = shared.map((i) => (actual[i] as number) - (expected[i]?.estimate as number));
    const squares = errors.map((error) => error * error);
    const absolute = errors.reduce((sum, error) => sum + Math.abs(error), 0);
    const square = squares.reduce((sum, value) => sum + value, 0);
    const guess: Guess = {
      kind,
      rootMeanSquareHours: Math.sqrt(square / shared.length),
      meanAbsoluteHours: absolute / shared.length,
    };
    return { guess, errors };
  });
  judged.sort((a, b) => a.guess.rootMeanSquareHours - b.guess.rootMeanSquareHours);
  const [best, second] = judged;
  const difference = best && second ? comparePaired(best.errors, second.errors) : null;
  return {
    guesses: judged.map(({ guess }) => guess),
    loads: shared.length,
    bestOverSecond: difference,
    winner: best && difference !== null && difference.high < 0 ? best.guess.kind : null,
  };
}
