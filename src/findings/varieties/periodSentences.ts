import type { PeriodComparison } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { differenceWords } from "./scoreWords.ts";

const excludes = ({ low, high }: { readonly low: number; readonly high: number }, value: number): boolean =>
  low > value || high < value;

/** Means that moved by more than chance between the two quarters of the year. */
export const moved = (period: PeriodComparison): boolean => excludes(period.difference, 0);

/** Spreads that changed by more than chance. */
export const spreadChanged = (period: PeriodComparison): boolean => excludes(period.spreadRatio, 1);

/** As many are said in words. */
const MOST_SAID = 4;

/** One comparison in words: `Alva’s final moisture lies 0.21 points (0.10 to 0.32) higher`. */
function movedWords({ variety, measure, difference }: PeriodComparison, units: UnitSystem): Sentence {
  const up = difference.estimate >= 0;
  const [low, high] = up ? [difference.low, difference.high] : [-difference.high, -difference.low];
  return [
    `${variety}: ${maltMeasure(measure).words} `,
    strong(differenceWords(measure, { estimate: Math.abs(difference.estimate), low, high }, units)),
    ` ${up ? "higher" : "lower"} than in the quarter before.`,
  ];
}

function spreadWords({ variety, measure, spreadRatio }: PeriodComparison): Sentence {
  const { estimate, low, high } = spreadRatio;
  return [
    `${variety}: ${maltMeasure(measure).words} spreads `,
    strong(`${printNumber(estimate, 1)}\u00a0times`),
    ` as wide as in the quarter before (${printNumber(low, 1)} to ${printNumber(high, 1)}).`,
  ];
}

/** What changed from the last quarter to this one, and how much of that chance alone would show. */
export function periodsSentence(periods: readonly PeriodComparison[], units: UnitSystem): Sentence {
  if (periods.length === 0) return [];
  const shifted = periods.filter(moved);
  const wider = periods.filter(spreadChanged);
  const looks = 2 * periods.length;
  const chance = printNumber(looks * 0.05, looks * 0.05 < 9.95 ? 1 : 0);
  const caution: Sentence = [
    `${counted(looks, "comparison")} of means and spreads: by chance alone about ${chance} of their 95\u00a0% intervals would leave out no change.`,
  ];
  const said = [
    ...shifted.slice(0, MOST_SAID).map((one) => movedWords(one, units)),
    ...wider.slice(0, MOST_SAID).map(spreadWords),
  ];
  const more = shifted.length + wider.length - said.length;
  if (said.length === 0) return joinSentences([["No mean and no spread moved by more than chance."], caution]);
  return joinSentences([...said, more > 0 ? [`${printNumber(more, 0)} more in the drawing and table.`] : [], caution]);
}
