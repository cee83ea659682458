import { awayFromMedian, brownForsythe } from "../../analysis/brownForsythe.ts";
import { fUpperTail, studentTQuantile, studentTTwoSidedP } from "../../analysis/distributions.ts";
import { holmAdjusted } from "../../analysis/holmAdjusted.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { mean, sampleStandardDeviation } from "../../analysis/summary.ts";
import { varianceSplit } from "../../analysis/varianceSplit.ts";
import type { LotSpread, SpreadSplit } from "../varietiesResult.ts";
import type { HeldMeasure } from "./ground.ts";
import type { AdjustedMeasure, ScaledValue } from "./season.ts";

/** Where the spread lies is asked from this many lots on. */
const FEWEST_LOTS = 5;
/** A lot's level and its spread are judged from this many batches of it on. */
const FEWEST_FOR_LEVEL = 3;
/** With four, two distances from the median are always alike, and the test finds unevenness several times too often. */
const FEWEST_FOR_SPREAD = 5;
const CERTAIN = 0.05;

/** One measure's values lot by lot, lots by their first batch. */
export interface LotsOfMeasure {
  readonly held: HeldMeasure;
  readonly variety: string;
  /** The measure's values of all varieties. */
  readonly house: AdjustedMeasure["values"];
  readonly seasonTakenOut: boolean;
  readonly lots: readonly { readonly lot: string; readonly values: readonly ScaledValue[] }[];
}

export function lotsOfMeasure(
  held: HeldMeasure,
  { seasonTakenOut, values }: AdjustedMeasure,
  variety: string,
): LotsOfMeasure {
  const lots = new Map<string, ScaledValue[]>();
  for (const value of values.get(variety) ?? []) {
    const { lot } = value.batch.row;
    if (lot === null) continue;
    const own = lots.get(lot);
    if (own) own.push(value);
    else lots.set(lot, [value]);
  }
  return { held, variety, house: values, seasonTakenOut, lots: [...lots].map(([lot, own]) => ({ lot, values: own })) };
}

const adjustedOf = (values: readonly ScaledValue[]): number[] => values.map(({ adjusted }) => adjusted);

/** Sums of some values about a middle that is near to all of them. */
interface Sums {
  readonly count: number;
  readonly sum: number;
  readonly squares: number;
}

const sumsAbout = (values: readonly number[], middle: number): Sums => ({
  count: values.length,
  sum: values.reduce((sum, value) => sum + (value - middle), 0),
  squares: values.reduce((sum, value) => sum + (value - middle) ** 2, 0),
});
const added = (a: Sums, b: Sums): Sums => ({
  count: a.count + b.count,
  sum: a.sum + b.sum,
  squares: a.squares + b.squares,
});
const less = (a: Sums, b: Sums): Sums => added(a, { count: -b.count, sum: -b.sum, squares: -b.squares });
const none: Sums = { count: 0, sum: 0, squares: 0 };
const meanOf = ({ count, sum }: Sums): number => sum / count;
const squaresAboutMean = ({ count, sum, squares }: Sums): number => Math.max(0, squares - (sum * sum) / count);

/**
 * Does each lot stand at another level than all others of its variety? The lot against the rest by Welch's test and by
 * Student's, whichever is the less sure: Welch's calls three or four batches that lie close together by chance far too
 * certain, Student's a lot that spreads more than the others. The rest is the whole less the lot, so that many lots cost
 * no more than their batches.
 */
function levelPs({ lots }: LotsOfMeasure): readonly (number | null)[] {
  const all = lots.flatMap(({ values }) => adjustedOf(values));
  const middle = all.length === 0 ? 0 : mean(all);
  const own = lots.map(({ values }) => sumsAbout(adjustedOf(values), middle));
  const whole = own.reduce(added, none);
  return own.map((lot) => {
    const rest = less(whole, lot);
    if (lot.count < FEWEST_FOR_LEVEL || lots.length < 3 || rest.count < FEWEST_FOR_LEVEL) return null;
    const [inLot, inRest] = [squaresAboutMean(lot), squaresAboutMean(rest)];
    const [ofLot, ofRest] = [inLot / (lot.count - 1) / lot.count, inRest / (rest.count - 1) / rest.count];
    // What rounding leaves of values that are all alike is no spread.
    if (!(ofLot + ofRest > 1e-24 * (1 + middle * middle))) return null;
    const apart = meanOf(lot) - meanOf(rest);
    const welch = (ofLot + ofRest) ** 2 / (ofLot ** 2 / (lot.count - 1) + ofRest ** 2 / (rest.count - 1));
    const student = lot.count + rest.count - 2;
    const pooled = ((inLot + inRest) / student) * (1 / lot.count + 1 / rest.count);
    return Math.max(
      studentTTwoSidedP(apart / Math.sqrt(ofLot + ofRest), welch),
      studentTTwoSidedP(apart / Math.sqrt(pooled), student),
    );
  });
}

/** Distances from the lot's middle; √(n/(n−1)) evens out that few batches lie nearer to their own. */
const awayFrom = (values: readonly ScaledValue[]): number[] =>
  awayFromMedian(adjustedOf(values)).map((away) => away * Math.sqrt(values.length / (values.length - 1)));

/**
 * Does each lot spread more than the others? One-sided, after Brown and Forsythe: the lot's distances from its middle against
 * all other lots' from theirs. Lots of fewer than five batches say nothing.
 */
function spreadPs({ lots }: LotsOfMeasure): readonly (number | null)[] {
  const own = lots.map(({ values }) => (values.length < FEWEST_FOR_SPREAD ? null : sumsAbout(awayFrom(values), 0)));
  const judged = own.filter((sums) => sums !== null);
  const whole = judged.reduce(added, none);
  return own.map((lot) => {
    if (lot === null || judged.length < 3) return null;
    const rest = less(whole, lot);
    const within = squaresAboutMean(lot) + squaresAboutMean(rest);
    const between = squaresAboutMean(whole) - within;
    if (!(within > 0)) return null;
    const p = fUpperTail(Math.max(0, between) / (within / (whole.count - 2)), 1, whole.count - 2);
    return meanOf(lot) > meanOf(rest) ? p / 2 : 1 - p / 2;
  });
}

/** The lot's mean with the spread that is common within lots. */
function meanInterval(values: readonly number[], squares: number, degreesOfFreedom: number): Interval {
  const estimate = mean(values);
  if (degreesOfFreedom < 1) return { estimate, low: estimate, high: estimate };
  const reach = studentTQuantile(0.975, degreesOfFreedom) * Math.sqrt(squares / degreesOfFreedom / values.length);
  return { estimate, low: estimate - reach, high: estimate + reach };
}

interface Tested {
  readonly measured: LotsOfMeasure;
  readonly level: readonly (number | null)[];
  readonly spread: readonly (number | null)[];
}

/** Corrects over every lot and measure that was tested; what was not stays null. */
function corrected(lists: readonly (readonly (number | null)[])[]): readonly (readonly (number | null)[])[] {
  const adjusted = holmAdjusted(lists.flat().filter((p) => p !== null));
  let next = 0;
  return lists.map((list) => list.map((p) => (p === null ? null : (adjusted[next++] as number))));
}

function splitOf({ measured, level, spread }: Tested): SpreadSplit {
  const { held, lots, seasonTakenOut } = measured;
  const raws = lots.map(({ values }) => values.map(({ raw }) => raw));
  const degreesOfFreedom = raws.reduce((sum, list) => sum + list.length - 1, 0);
  const squares = raws.reduce((sum, list) => {
    const middle = mean(list);
    return sum + list.reduce((own, value) => own + (value - middle) ** 2, 0);
  }, 0);
  const shown = lots.map(({ lot, values }, at): LotSpread => {
    const raw = raws[at] as number[];
    const moments = values.map(({ batch }) => batch.at);
    const [differsP, unevenP] = [level[at] ?? null, spread[at] ?? null];
    return {
      lot,
      batches: values.length,
      mean: mean(raw),
      meanInterval: meanInterval(raw, squares, degreesOfFreedom),
      spread: raw.length < 2 ? null : sampleStandardDeviation(raw),
      firstAt: Math.min(...moments),
      lastAt: Math.max(...moments),
      differs: differsP !== null && differsP < CERTAIN,
      differsP,
      uneven: unevenP !== null && unevenP < CERTAIN,
      unevenP,
    };
  });
  const common = { measure: held.tolerance.measure, lots: shown, seasonTakenOut };
  const unknown = { betweenLots: null, withinLots: null, shareBetween: null, spreadsDifferP: null };
  const count = lots.length;
  if (count < FEWEST_LOTS) {
    const have = count === 1 ? "1 lot" : `${count} lots`;
    return { ...common, ...unknown, tooLittle: `${have}; where the spread lies can be told from ${FEWEST_LOTS} on.` };
  }
  const adjusted = lots.map(({ values }) => adjustedOf(values));
  if (!adjusted.some((list) => list.some((value) => value !== list[0]))) {
    return { ...common, ...unknown, tooLittle: "No two batches of a lot differ." };
  }
  const split = varianceSplit(adjusted);
  const slope = held.scale.slope(held.scale.from(mean(adjusted.flat())));
  const inUnit = ({ estimate, low, high }: Interval): Interval => ({
    estimate: estimate / slope,
    low: low / slope,
    high: high / slope,
  });
  const several = adjusted.filter((list) => list.length >= FEWEST_FOR_SPREAD);
  return {
    ...common,
    betweenLots: inUnit(split.between),
    withinLots: inUnit(split.within),
    shareBetween: split.shareBetween,
    spreadsDifferP: several.length < 2 ? null : (brownForsythe(several)?.p ?? null),
    tooLittle: null,
  };
}

/**
 * Where the spread of each measure lies, and which lots stand out, over measures that are corrected for together: every
 * lot and measure looked at (Holm). Tests and the split are made on the measure's scale with the house's season taken out;
 * lots are shown as they were measured.
 */
export function lotSpreads(measures: readonly LotsOfMeasure[]): readonly SpreadSplit[] {
  const levels = corrected(measures.map(levelPs));
  const spreads = corrected(measures.map(spreadPs));
  return measures
    .map((measured, at) => splitOf({ measured, level: levels[at] ?? [], spread: spreads[at] ?? [] }))
    .filter(({ lots }) => lots.length > 0);
}
