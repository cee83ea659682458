import type { AcrospireRun } from "../../report/steepGerminationResult.ts";
import { printNumber } from "../../units/print.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import { length, lengthRange, middleOf, wholePercent, wholePercentRange } from "./measureWords.ts";

/** How one batch's mean length stands against the house's range. */
export type LengthStanding = "short" | "long" | "within" | "unsure" | "no target";

/**
 * `short` and `long` only where the whole counting interval lies outside the range; a mean outside it that counting error
 * alone could have put there is `unsure`.
 */
export function lengthStanding({ meanLength, targets }: AcrospireRun): LengthStanding {
  const low = targets?.meanLow ?? null;
  const high = targets?.meanHigh ?? null;
  if (low === null && high === null) return "no target";
  if (low !== null && meanLength.high < low) return "short";
  if (high !== null && meanLength.low > high) return "long";
  const inside = (low === null || meanLength.estimate >= low) && (high === null || meanLength.estimate <= high);
  return inside ? "within" : "unsure";
}

/** More overgrown than the house allows, beyond what counting error could have done. */
export const isOvergrown = ({ overgrownPercent, targets }: AcrospireRun): boolean =>
  targets?.overgrownHigh != null && overgrownPercent.low > targets.overgrownHigh;

const runsThat = (runs: readonly AcrospireRun[], standing: LengthStanding): readonly AcrospireRun[] =>
  runs.filter((run) => lengthStanding(run) === standing);

/** How long the malt comes off, and in how many batches it was short or long beyond counting error. */
export function lengthSentence(runs: readonly AcrospireRun[]): Sentence {
  const middle = middleOf(runs.map(({ meanLength }) => meanLength.estimate));
  if (middle === null) return [];
  const usual: Sentence = [
    "Malt comes off at ",
    strong(length(middle)),
    ` of the kernel’s length (the middle one of ${counted(runs.length, "batch", "batches")})`,
  ];
  const judged = runs.filter((run) => lengthStanding(run) !== "no target").length;
  if (judged === 0) return [...usual, "; targets.csv sets no range for it."];
  const short = runsThat(runs, "short").length;
  const long = runsThat(runs, "long").length;
  if (short + long === 0) return [...usual, ", in no batch short or long of its range beyond counting error."];
  const none = (count: number): string => (count === 0 ? "none" : printNumber(count, 0));
  return [
    ...usual,
    "; beyond counting error ",
    strong(`${none(short)} ${short === 1 ? "was" : "were"} short`),
    " of its range and ",
    strong(`${none(long)} long`),
    ".",
  ];
}

/** How far one count can be trusted, by the latest batch. */
export function countingErrorSentence(runs: readonly AcrospireRun[]): Sentence {
  const latest = runs.at(-1);
  if (latest === undefined) return [];
  return [
    `Upright strokes are what counting alone leaves open: batch ${latest.run}, ${counted(latest.counted, "kernel")} counted, lies at ${length(latest.meanLength.estimate)} (${lengthRange(latest.meanLength)}).`,
  ];
}

/** How even the growth is: shares between half and full length, short of half, and overgrown. */
export function evennessSentence(runs: readonly AcrospireRun[]): Sentence {
  const middle = (of: (run: AcrospireRun) => number): number => middleOf(runs.map(of)) ?? 0;
  if (runs.length === 0) return [];
  const [even, under, over] = [
    middle(({ evenPercent }) => evenPercent.estimate),
    middle(({ undergrownPercent }) => undergrownPercent.estimate),
    middle(({ overgrownPercent }) => overgrownPercent.estimate),
  ];
  return [
    "In the middle batch ",
    strong(wholePercent(even)),
    ` of the kernels lie between half and full length, ${wholePercent(under)} are undergrown (under half) and ${wholePercent(over)} overgrown.`,
  ];
}

/** Which batches were overgrown beyond counting error; empty where no limit is set. */
export function overgrownSentence(runs: readonly AcrospireRun[]): Sentence {
  const judged = runs.filter(({ targets }) => targets?.overgrownHigh != null);
  const limit = judged.at(-1)?.targets?.overgrownHigh;
  if (limit === null || limit === undefined) return [];
  const over = judged.filter(isOvergrown);
  const said = `more than ${wholePercent(limit)} overgrown`;
  if (over.length === 0) return [`No batch had ${said} beyond counting error.`];
  const latest = over.at(-1);
  const which =
    latest === undefined
      ? "."
      : `, the latest ${latest.run}: ${wholePercent(latest.overgrownPercent.estimate)} (${wholePercentRange(latest.overgrownPercent)}).`;
  return [strong(counted(over.length, "batch", "batches")), ` had ${said} beyond counting error${which}`];
}
