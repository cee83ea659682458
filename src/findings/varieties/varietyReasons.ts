import type { VarietyDetail, VarietyReason, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import { type Sentence, strong } from "../sentence.ts";
import { chanceInHundred } from "./scoreWords.ts";

/** Points in 100 by which *on target* rises without a lot before that lot is said to pull it down. */
const PULLS = 1;

/** By how many points in 100 *on target* rises once the lot that stands out is left out; 0 where it does not rise. */
export function riseWithoutLot({ onTarget }: VarietyScore, detail: VarietyDetail | undefined): number {
  const without = detail?.withoutLot ?? null;
  if (without === null || onTarget === null) return 0;
  const rise = without.onTarget - onTarget.estimate;
  return rise >= PULLS ? rise : 0;
}

/**
 * The reason that one would act on first: a lot without which the score rises, since a lot may stand out by being better;
 * then grain, then process.
 */
export function firstReason(score: VarietyScore, detail: VarietyDetail | undefined): VarietyReason | null {
  const reasons = detail?.reasons ?? [];
  const lot = riseWithoutLot(score, detail) > 0 ? (detail?.withoutLot?.lot ?? null) : null;
  const pulls = reasons.find((reason) => reason.kind === "lot" && reason.lot === lot);
  if (lot !== null && pulls !== undefined) return pulls;
  const shared = reasons.filter((reason) => reason.lot === null && reason.goesWith !== null);
  return shared.find(({ kind }) => kind === "grain") ?? shared.find(({ kind }) => kind === "process") ?? null;
}

/** A measure met so surely needs no naming. */
const SURE = 0.95;

/** The measures in which the reason's lot spreads more than the variety's others. */
const unevenMeasures = ({ lot }: VarietyReason, detail: VarietyDetail | undefined): readonly string[] =>
  (detail?.splits ?? []).flatMap(({ measure, lots }) =>
    lots.some((own) => own.lot === lot && own.uneven) ? [measure] : [],
  );

/**
 * Where it starts, to follow `it starts with`: `grain lot L7, uneven in itself, in dry-matter yield`; a measure where no lot
 * is to blame. Empty where no measure drags.
 */
export function startsWith(score: VarietyScore, detail: VarietyDetail | undefined): Sentence {
  const reason = firstReason(score, detail);
  if (reason !== null && reason.kind === "lot") {
    const name = strong(`grain lot ${reason.lot}`);
    const { words } = maltMeasure(reason.measure);
    if (reason.how === "level") return [name, `, in ${words}`];
    const others = unevenMeasures(reason, detail).filter((measure) => measure !== reason.measure).length;
    const also = others === 0 ? "" : ` and ${others} other ${others === 1 ? "measure" : "measures"}`;
    return [name, `, uneven in itself, in ${words}${also}`];
  }
  if (reason !== null) return [strong(maltMeasure(reason.measure).words), `, which goes with ${reason.goesWith}`];
  const worst = score.measures[0];
  if (worst === undefined || worst.onTarget >= SURE) return [];
  const name = maltMeasure(worst.tolerance.measure).words;
  return [strong(name), `, which alone is met with a chance of ${chanceInHundred(worst.onTarget)}`];
}
