import type { LotSpread, SpreadSplit } from "../../report/varietiesResult.ts";
import { maltMeasure, printMeasureDifference, printMeasureMean } from "../../units/maltMeasure.ts";
import { printNumber, printPValue } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";

/** `p < 0.001`, `p 0.012`. */
const pWords = (p: number | null): string => {
  if (p === null) return "";
  const text = printPValue(p);
  return text.startsWith("<") ? `, p\u00a0${text}` : `, p\u00a0=\u00a0${text}`;
};

function differsSentence(lot: LotSpread, { measure }: SpreadSplit, units: UnitSystem): Sentence {
  const { words } = maltMeasure(measure);
  const shown = maltMeasure(measure);
  return [
    strong(`Lot ${lot.lot}`),
    ` has another level: mean ${words} ${printMeasureMean(shown, lot.mean, units)} (${printMeasureMean(shown, lot.meanInterval.low, units, { bare: true })} to ${printMeasureMean(shown, lot.meanInterval.high, units)}), ${counted(lot.batches, "batch", "batches")}${pWords(lot.differsP)}, corrected for the number of lots.`,
  ];
}

function unevenSentence(lot: LotSpread, { measure }: SpreadSplit, units: UnitSystem): Sentence {
  const shown = maltMeasure(measure);
  const spread = lot.spread === null ? "" : ` (spread ${printMeasureDifference(shown, lot.spread, units)})`;
  return [
    strong(`Lot ${lot.lot}`),
    ` is uneven in itself: its ${shown.words} spreads more than that of the other lots${spread}${pWords(lot.unevenP)}. That is another fault than another level: no setting cures a lot of mixed grain.`,
  ];
}

/** What stands out among the lots of one measure. Says so where nothing does. */
export function lotsSentences(split: SpreadSplit, units: UnitSystem): readonly Sentence[] {
  const { lots, tooLittle } = split;
  const differing = lots.filter(({ differs }) => differs).map((lot) => differsSentence(lot, split, units));
  const uneven = lots.filter(({ uneven: own }) => own).map((lot) => unevenSentence(lot, split, units));
  if (differing.length + uneven.length > 0) return [...differing, ...uneven];
  if (tooLittle !== null || lots.length < 2) return [];
  return [[`No lot’s ${maltMeasure(split.measure).words} stands out by level or by spread.`]];
}

/** The lots that anything speaks of, over all measures. */
export const standingOut = ({ lots }: SpreadSplit): readonly LotSpread[] =>
  lots.filter(({ differs, uneven }) => differs || uneven);

/** Where the spread of one measure comes from: `Between lots 0.10 points, within lots 0.22: 18 % of it (2 to 55) lies between lots.` */
export function splitSentence(
  { measure, betweenLots, withinLots, shareBetween, tooLittle }: SpreadSplit,
  units: UnitSystem,
): Sentence {
  const shown = maltMeasure(measure);
  const name = `${shown.words.charAt(0).toUpperCase()}${shown.words.slice(1)}`;
  if (betweenLots === null || withinLots === null || shareBetween === null) {
    return tooLittle === null ? [] : [`${name}: ${tooLittle}`];
  }
  const { estimate, low, high } = shareBetween;
  const percent = (share: number): string => printNumber(100 * share, 0);
  return [
    `${name}: `,
    strong(`${percent(estimate)}\u00a0%`),
    ` of its spread lies between lots (${percent(low)} to ${percent(high)}\u00a0%); ${printMeasureDifference(shown, betweenLots.estimate, units)} from lot to lot, ${printMeasureDifference(shown, withinLots.estimate, units)} from batch to batch of one lot.`,
  ];
}

/** What to do about the measure whose spread lies most between lots, or within. Empty where nothing is certain. */
export function splitAdvice(splits: readonly SpreadSplit[]): Sentence {
  const known = splits.filter(({ shareBetween }) => shareBetween !== null);
  const grain = known
    .filter(({ shareBetween }) => (shareBetween?.low ?? 0) > 0.5)
    .map(({ measure }) => maltMeasure(measure).words);
  const house = known
    .filter(({ shareBetween }) => (shareBetween?.high ?? 1) < 0.5)
    .map(({ measure }) => maltMeasure(measure).words);
  if (known.length === 0) return [];
  if (grain.length + house.length === 0) return ["For no measure is it certain which of the two is the greater."];
  return joinSentences([
    grain.length === 0 ? [] : [`More from lot to lot than within: ${listed(grain)}. Look at the grain first.`],
    house.length === 0
      ? []
      : [`More within lots than between: ${listed(house)}. Look at the house first, not at the grain.`],
  ]);
}
