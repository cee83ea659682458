import { twoSample } from "../../analysis/beforeAfter/twoSample.ts";
import { awayFromMedian, brownForsythe, oneWay } from "../../analysis/brownForsythe.ts";
import { studentTQuantile } from "../../analysis/distributions.ts";
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
const FEWEST_FOR_SPREAD = 4;
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

/** Does a lot stand at another level than all others of its variety? */
function levelP({ lots }: LotsOfMeasure, at: number): number | null {
  const own = adjustedOf(lots[at]?.values ?? []);
  const others = lots.filter((_, place) => place !== at);
  const rest = others.flatMap(({ values }) => adjustedOf(values));
  if (own.length < FEWEST_FOR_LEVEL || others.length < 2 || rest.length < FEWEST_FOR_LEVEL) return null;
  if (sampleStandardDeviation(own) + sampleStandardDeviation(rest) === 0) return null;
  return twoSample(rest, own).p;
}

/** Distances from the lot's middle; √(n/(n−1)) evens out that few batches lie nearer to their own. */
const awayFrom = (values: readonly ScaledValue[]): number[] =>
  awayFromMedian(adjustedOf(values)).map((away) => away * Math.sqrt(values.length / (values.length - 1)));

/** Does a lot spread more than the others? One-sided, after Brown and Forsythe; lots of fewer than four batches say nothing. */
function spreadP({ lots }: LotsOfMeasure, at: number): number | null {
  const enough = (values: readonly ScaledValue[]): boolean => values.length >= FEWEST_FOR_SPREAD;
  const own = lots[at]?.values ?? [];
  const others = lots.filter(({ values }, place) => place !== at && enough(values));
  if (!enough(own) || others.length < 2) return null;
  const [wide, rest] = [awayFrom(own), others.flatMap(({ values }) => awayFrom(values))];
  const test = oneWay([wide, rest]);
  if (test === null) return null;
  return mean(wide) > mean(rest) ? test.p / 2 : 1 - test.p / 2;
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
  const none = { betweenLots: null, withinLots: null, shareBetween: null, spreadsDifferP: null };
  const count = lots.length;
  if (count < FEWEST_LOTS) {
    const have = count === 1 ? "1 lot" : `${count} lots`;
    return { ...common, ...none, tooLittle: `${have}; where the spread lies can be told from ${FEWEST_LOTS} on.` };
  }
  const adjusted = lots.map(({ values }) => adjustedOf(values));
  if (!adjusted.some((list) => list.some((value) => value !== list[0]))) {
    return { ...common, ...none, tooLittle: "No two batches of a lot differ." };
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
  const levels = corrected(measures.map((measured) => measured.lots.map((_, at) => levelP(measured, at))));
  const spreads = corrected(measures.map((measured) => measured.lots.map((_, at) => spreadP(measured, at))));
  return measures
    .map((measured, at) => splitOf({ measured, level: levels[at] ?? [], spread: spreads[at] ?? [] }))
    .filter(({ lots }) => lots.length > 0);
}
