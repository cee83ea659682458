import type { Interval } from "../../analysis/regressionFit.ts";
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
  const shown = maltMeasure(measure);
  const [low, high] = [lot.meanInterval.low, lot.meanInterval.high];
  const range = `${printMeasureMean(shown, low, units, { bare: true })} to ${printMeasureMean(shown, high, units)}`;
  return [
    strong(`Lot ${lot.lot}`),
    ` has another level: mean ${shown.words} ${printMeasureMean(shown, lot.mean, units)} (${range}), ${counted(lot.batches, "batch", "batches")}${pWords(lot.differsP)}, corrected for the number of lots.`,
  ];
}

interface UnevenIn {
  readonly split: SpreadSplit;
  readonly lot: LotSpread;
}

/** One sentence a lot, over all measures that it is uneven in. */
function unevenSentence(name: string, places: readonly UnevenIn[], units: UnitSystem): Sentence {
  const measures = places.map(({ split, lot }) => {
    const shown = maltMeasure(split.measure);
    const spread = lot.spread === null ? "" : `spread ${printMeasureDifference(shown, lot.spread, units)}`;
    const about = `${spread}${spread === "" ? pWords(lot.unevenP).slice(2) : pWords(lot.unevenP)}`;
    return about === "" ? shown.words : `${shown.words} (${about})`;
  });
  return [
    strong(`Lot ${name}`),
    ` is uneven in itself: its ${listed(measures)} ${measures.length === 1 ? "spreads" : "spread"} more than in the other lots. That is another fault than another level: a setting moves the level of a lot and not its spread.`,
  ];
}

const unevenLots = (splits: readonly SpreadSplit[]): readonly UnevenIn[] =>
  splits.flatMap((split) => split.lots.filter(({ uneven }) => uneven).map((lot) => ({ split, lot })));

/** What stands out among a variety's lots: another level, measure by measure; and lots that are uneven in themselves. */
export function lotsSentences(splits: readonly SpreadSplit[], units: UnitSystem): readonly Sentence[] {
  const uneven = unevenLots(splits);
  const names = [...new Set(uneven.map(({ lot }) => lot.lot))];
  return [
    ...names.map((name) =>
      unevenSentence(
        name,
        uneven.filter(({ lot }) => lot.lot === name),
        units,
      ),
    ),
    ...splits.flatMap((split) =>
      split.lots.filter(({ differs }) => differs).map((lot) => differsSentence(lot, split, units)),
    ),
  ];
}

/** The lots that anything speaks of, over all measures. */
export const standingOut = ({ lots }: SpreadSplit): readonly LotSpread[] =>
  lots.filter(({ differs, uneven }) => differs || uneven);

/** True where the interval of a share closes at 0: lots alike beyond what it allows for, which is not certainty. */
const noneSeen = ({ high }: Interval): boolean => high < 0.005;

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
  if (noneSeen(shareBetween)) {
    return [
      `${name}: none of its spread is seen between lots, which lie closer together than chance alone would mostly have them; ${printMeasureDifference(shown, withinLots.estimate, units)} from batch to batch of one lot.`,
    ];
  }
  return [
    `${name}: `,
    strong(`${percent(estimate)}\u00a0%`),
    ` of its spread lies between lots (${percent(low)} to ${percent(high)}\u00a0%); ${printMeasureDifference(shown, betweenLots.estimate, units)} from lot to lot, ${printMeasureDifference(shown, withinLots.estimate, units)} from batch to batch of one lot.`,
  ];
}

/**
 * What to do about measures whose spread lies surely more between lots, or within them. A measure in which one lot is uneven
 * in itself is told apart: what spreads within is then that lot's own grain. Empty where no measure has enough lots.
 */
export function splitAdvice(splits: readonly SpreadSplit[]): Sentence {
  const known = splits.filter(({ shareBetween }) => shareBetween !== null);
  if (known.length === 0) return [];
  const named = (those: readonly SpreadSplit[]): string =>
    listed(those.map(({ measure }) => maltMeasure(measure).words));
  const grain = known.filter(({ shareBetween }) => (shareBetween?.low ?? 0) > 0.5);
  const within = known.filter(({ shareBetween }) => (shareBetween?.high ?? 1) < 0.5);
  const mixed = within.filter(({ lots }) => lots.some(({ uneven }) => uneven));
  const house = within.filter((split) => !mixed.includes(split));
  const lots = [...new Set(unevenLots(mixed).map(({ lot }) => lot.lot))];
  if (grain.length + within.length === 0) return ["For no measure is it certain which of the two is the greater."];
  return joinSentences([
    grain.length === 0 ? [] : [`More from lot to lot than within: ${named(grain)}. Look at the grain first.`],
    mixed.length === 0
      ? []
      : [
          `More within lots than between, but with ${lots.length === 1 ? "a lot" : "lots"} uneven in ${lots.length === 1 ? "itself" : "themselves"} (${listed(lots)}): ${named(mixed)}. Look at ${lots.length === 1 ? "that lot" : "those lots"} first.`,
        ],
    house.length === 0
      ? []
      : [`More within lots than between: ${named(house)}. Look at the house first, not at the grain.`],
  ]);
}
