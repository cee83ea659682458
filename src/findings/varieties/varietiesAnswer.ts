import type { VarietiesResult, VarietyDetail, VarietyReason, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { aimsBeside, chanceInHundred, inHundred, scored, scoreRange } from "./scoreWords.ts";

/** From here on, in 100, nothing needs a reason. */
const HIGH = 90;

/** The variety that the answer speaks of: the lowest of those with an interval, else the lowest of all. */
export function lowestScore({ scores }: VarietiesResult): VarietyScore | null {
  const ranked = scored(scores);
  return ranked.find(({ standing }) => standing === "full") ?? ranked[0] ?? null;
}

/** The reason that one would act on first: a lot that stands out, then grain, then process. */
export function firstReason(detail: VarietyDetail | undefined): VarietyReason | null {
  const reasons = detail?.reasons ?? [];
  for (const kind of ["lot", "grain", "process"] as const) {
    const found = reasons.find((reason) => reason.kind === kind);
    if (found !== undefined) return found;
  }
  return null;
}

/** `, in final moisture`; a lot that is uneven in itself is called so. */
export const reasonPlace = ({ how, measure }: VarietyReason): string =>
  `${how === "spread" ? ", uneven in itself" : ""}, in ${maltMeasure(measure).words}`;

/** Where it starts: `it starts with grain lot L7, in final moisture`. */
function startClause(score: VarietyScore, detail: VarietyDetail | undefined): Sentence {
  const reason = firstReason(detail);
  const worst = score.measures[0];
  if (reason?.lot != null) {
    return ["it starts with ", strong(`grain lot ${reason.lot}`), reasonPlace(reason)];
  }
  if (reason !== null && reason.goesWith !== null) {
    return ["it starts with ", strong(maltMeasure(reason.measure).words), `, which goes with ${reason.goesWith}`];
  }
  if (worst === undefined) return [];
  const name = maltMeasure(worst.tolerance.measure).words;
  return ["it starts with ", strong(name), `, which alone is met with a chance of ${chanceInHundred(worst.onTarget)}`];
}

/** The page's first sentence: which variety is uneven, and where does it start? */
export function varietiesAnswer(result: VarietiesResult): Sentence {
  const worst = lowestScore(result);
  if (worst === null || worst.onTarget === null) {
    return [result.tooLittle ?? "No variety has the five batches yet that a score needs."];
  }
  const { onTarget, variety } = worst;
  const detail = result.details.find((one) => one.variety === variety);
  const chance: Sentence = [strong(inHundred(onTarget.estimate)), scoreRange(onTarget)];
  const several = scored(result.scores).length > 1;
  if (onTarget.estimate >= HIGH) {
    return several
      ? [
          "Every variety comes out alike: of the lowest, ",
          strong(variety),
          ", the next batch meets every tolerance in ",
          ...chance,
          " cases.",
        ]
      : [strong(variety), " comes out alike: the next batch meets every tolerance in ", ...chance, " cases."];
  }
  const start = startClause(worst, detail);
  const end: Sentence = start.length === 0 ? ["."] : ["; ", ...start, "."];
  const is = aimsBeside(worst)
    ? `is ${several ? "the least sure, and " : ""}more beside its target than uneven`
    : `is ${several ? "the least even" : "uneven"}`;
  return [strong(variety), ` ${is}: the chance that the next batch meets every tolerance is `, ...chance, ...end];
}

/** Whether the lowest is lower than the others by more than chance. Empty where there is nothing to compare. */
function toldApart(result: VarietiesResult): Sentence {
  const worst = lowestScore(result);
  const high = worst?.onTarget?.high ?? null;
  const others = scored(result.scores).filter((one) => one !== worst && one.standing === "full");
  if (worst === null || high === null || others.length === 0) return [];
  const clear = others.filter(({ onTarget }) => (onTarget?.low ?? 0) > high).map(({ variety }) => variety);
  const near = others.filter(({ variety }) => !clear.includes(variety)).map(({ variety }) => variety);
  const those = (names: readonly string[]): string => `${names.length === 1 ? "that" : "those"} of ${listed(names)}`;
  const overlap = `overlaps with ${those(near)}, so these logs do not tell them apart for certain`;
  if (near.length === 0) return [`Its interval lies below ${those(clear)}.`];
  return [clear.length === 0 ? `Its interval ${overlap}.` : `Its interval lies below ${those(clear)}; it ${overlap}.`];
}

/** How far the answer may be trusted, and what has no part in it. */
export function varietiesGrounds(result: VarietiesResult): readonly Sentence[] {
  const early = scored(result.scores).filter(({ standing }) => standing === "early");
  const none = result.scores.filter(({ standing }) => standing === "none");
  const earlySaid = early.map(({ variety, batches }) => `${variety} (${counted(batches, "batch", "batches")})`);
  return [
    toldApart(result),
    joinSentences([
      early.length === 0 ? [] : [`Early, and so without interval: ${listed(earlySaid)}.`],
      none.length === 0 || scored(result.scores).length === 0
        ? []
        : [`Without a score yet: ${listed(none.map(({ variety }) => variety))}.`],
    ]),
  ];
}
