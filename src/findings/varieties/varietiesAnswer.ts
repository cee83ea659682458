import type { ScoreNumber, VarietiesResult, VarietyDetail, VarietyScore } from "../../report/varietiesResult.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { aimsBeside, inHundred, scored, scoreRange } from "./scoreWords.ts";
import { riseWithoutLot, startsWith } from "./varietyReasons.ts";

/** From here on, in 100, nothing needs a reason. */
const HIGH = 90;
/** Varieties whose *even* lies as close as this, in 100, are as uneven as each other: a lot to blame then decides. */
const AS_EVEN = 2;

/** Those with an interval where there are any, else all with a score: an early one is not ranked above its evidence. */
function ranked({ scores }: VarietiesResult): readonly VarietyScore[] {
  const full = scored(scores).filter(({ standing }) => standing === "full");
  return full.length > 0 ? full : scored(scores);
}

const detailOf = ({ details }: VarietiesResult, { variety }: VarietyScore): VarietyDetail | undefined =>
  details.find((detail) => detail.variety === variety);

/** The lowest on target; null without a score. */
export const leastOnTarget = (result: VarietiesResult): VarietyScore | null => ranked(result)[0] ?? null;

const evenOf = ({ even }: VarietyScore): number => even?.estimate ?? 100;

/** The least even and those about as uneven. */
function leastEvenAndNear(result: VarietiesResult): readonly VarietyScore[] {
  const all = ranked(result);
  const lowest = Math.min(...all.map(evenOf));
  return all.filter((score) => evenOf(score) <= lowest + AS_EVEN);
}

/** The least even; of those about as uneven the one that gains most without a lot that stands out. Null without a score. */
export function leastEven(result: VarietiesResult): VarietyScore | null {
  const near = leastEvenAndNear(result);
  const gain = (score: VarietyScore): number => riseWithoutLot(score, detailOf(result, score));
  return [...near].sort((x, y) => gain(y) - gain(x) || evenOf(x) - evenOf(y))[0] ?? null;
}

const chance = (score: ScoreNumber): Sentence => [strong(inHundred(score.estimate)), scoreRange(score)];

/** The page's first sentence: which variety is uneven? */
export function varietiesAnswer(result: VarietiesResult): Sentence {
  const lowest = leastOnTarget(result);
  const uneven = leastEven(result);
  if (lowest === null || lowest.onTarget === null || uneven === null || uneven.even === null) {
    return [result.tooLittle ?? "No variety has the five batches yet that a score needs."];
  }
  const several = scored(result.scores).length > 1;
  const name = strong(lowest.variety);
  if (lowest.onTarget.estimate >= HIGH) {
    const met: Sentence = ["the next batch meets every tolerance with a chance of ", ...chance(lowest.onTarget), "."];
    return several
      ? ["Every variety comes out alike: even of the lowest, ", name, ", ", ...met]
      : [name, " comes out alike: ", ...met];
  }
  if (several && uneven !== lowest && uneven.even.estimate < HIGH) return bothNumbers(uneven, lowest);
  const is = aimsBeside(lowest)
    ? `is ${several ? "the least sure, and " : ""}more beside its target than uneven`
    : `is ${several ? leastInBoth(result, lowest) : "uneven"}`;
  return [name, ` ${is}: the next batch meets every tolerance with a chance of `, ...chance(lowest.onTarget), "."];
}

/** Whose trouble the answer speaks of first, be it in *even* or in *on target*; null where nothing needs a reason. */
function troubled(result: VarietiesResult): VarietyScore | null {
  const [lowest, uneven] = [leastOnTarget(result), leastEven(result)];
  if (lowest === null || (lowest.onTarget?.estimate ?? HIGH) >= HIGH) return null;
  const isOther = scored(result.scores).length > 1 && uneven !== lowest && (uneven?.even?.estimate ?? HIGH) < HIGH;
  return isOther ? uneven : lowest;
}

/** Where it starts: a lot, the grain, the process or a measure. Empty where nothing needs a reason. */
export function varietiesStart(result: VarietiesResult): Sentence {
  const whose = troubled(result);
  if (whose === null) return [];
  const start = startsWith(whose, detailOf(result, whose));
  return start.length === 0 ? [] : [`In ${whose.variety} it starts with `, ...start, "."];
}

/** Of a variety that is the lowest in both numbers; another about as uneven is named, since the number after it is *on target*. */
function leastInBoth(result: VarietiesResult, lowest: VarietyScore): string {
  const near = leastEvenAndNear(result).flatMap((score) => (score === lowest ? [] : [score.variety]));
  return near.length === 0
    ? "the least even and the least on target"
    : `the least on target and, with ${listed(near)}, the least even`;
}

/** Where one variety spreads most and another lies lowest: both are named, each by its own number. */
function bothNumbers(uneven: VarietyScore, lowest: VarietyScore): Sentence {
  if (uneven.even === null || lowest.onTarget === null) return [];
  return [
    strong(uneven.variety),
    " is the least even, ",
    ...chance(uneven.even),
    "; ",
    strong(lowest.variety),
    " is the least on target, ",
    ...chance(lowest.onTarget),
    aimsBeside(lowest) ? ", more by its aim than by its spread." : ".",
  ];
}

/** Whether a variety lies below the others by more than chance. Empty where there is nothing to compare. */
function toldApart(
  result: VarietiesResult,
  lowest: VarietyScore | null,
  number: "onTarget" | "even",
  interval: string,
): Sentence {
  const high = lowest?.[number]?.high ?? null;
  const others = ranked(result).filter((one) => one !== lowest && one[number]?.low != null);
  if (lowest === null || high === null || others.length === 0) return [];
  const clear = others.filter((one) => (one[number]?.low ?? 0) > high).map(({ variety }) => variety);
  const near = others.filter(({ variety }) => !clear.includes(variety)).map(({ variety }) => variety);
  const those = (names: readonly string[]): string => `${names.length === 1 ? "that" : "those"} of ${listed(names)}`;
  const overlap = `overlaps with ${those(near)}, so these logs do not tell them apart for certain`;
  if (near.length === 0) return [`${interval} lies below ${those(clear)}.`];
  return [clear.length === 0 ? `${interval} ${overlap}.` : `${interval} lies below ${those(clear)}; it ${overlap}.`];
}

/** One sentence where both numbers speak of one variety, else one for each of the two. */
function toldApartSentences(result: VarietiesResult): Sentence {
  const [lowest, uneven] = [leastOnTarget(result), leastEven(result)];
  if (lowest === uneven || (uneven?.even?.estimate ?? HIGH) >= HIGH) {
    return toldApart(result, lowest, "onTarget", `The interval of ${lowest?.variety}`);
  }
  const isClear = (score: VarietyScore | null, number: "onTarget" | "even"): boolean =>
    ranked(result).some((one) => (one[number]?.low ?? 0) > (score?.[number]?.high ?? 100));
  if (
    !isClear(uneven, "even") &&
    !isClear(lowest, "onTarget") &&
    ranked(result).some(({ even }) => even?.low != null)
  ) {
    return [
      "Both intervals overlap with those of all other varieties, so these logs do not tell them apart for certain.",
    ];
  }
  return joinSentences([
    toldApart(result, uneven, "even", `How even: the interval of ${uneven?.variety}`),
    toldApart(result, lowest, "onTarget", `On target: that of ${lowest?.variety}`),
  ]);
}

/** Where it starts, what the numbers are, how far the answer may be trusted, and what has no part in it. */
export function varietiesGrounds(result: VarietiesResult): readonly Sentence[] {
  const early = scored(result.scores).filter(({ standing }) => standing === "early");
  const none = result.scores.filter(({ standing }) => standing === "none");
  const earlySaid = early.map(({ variety, batches }) => `${variety} (${counted(batches, "batch", "batches")})`);
  const able = scored(result.scores).length > 0;
  return [
    varietiesStart(result),
    able
      ? [
          "On target: the chance that the next batch meets every tolerance. Even: the same chance about the variety’s own centre.",
        ]
      : [],
    toldApartSentences(result),
    joinSentences([
      early.length === 0 ? [] : [`Early, and so without interval: ${listed(earlySaid)}.`],
      none.length === 0 || scored(result.scores).length === 0
        ? []
        : [`Without a score yet: ${listed(none.map(({ variety }) => variety))}.`],
    ]),
  ];
}
