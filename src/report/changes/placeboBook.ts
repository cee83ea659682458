import { placeboDates, placeboDifferences } from "../../analysis/beforeAfter/placeboDifferences.ts";
import { withinStretches } from "../../analysis/beforeAfter/withinStretches.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import { mean } from "../../analysis/summary.ts";
import type { ChangedMeasure, Placebo } from "../changesResult.ts";
import type { EventRow } from "../eventRow.ts";
import { beginningOf, type ChangeWindow, isLasting } from "./changeWindow.ts";
import type { ComparedGround, ComparedRow } from "./comparedRow.ts";
import { type AdjustmentWish, adjustmentFor, adjustmentKey } from "./covariates.ts";
import { seasonColumns } from "./season.ts";
import { datedRows } from "./standsAt.ts";
import { touchedBy } from "./touchedMeasures.ts";

/** Differences between fewer runs than this are mostly noise. */
const FEWEST_BESIDE = 5;
/** As many runs a side as leave this many dates to try. */
const WANTED_DATES = 40;
/** More dates than this tell no more: neighbouring ones share nearly all of their runs. */
const MOST_DATES = 200;

/** The house's own ups and downs in each measure, worked out once for all changes that are adjusted alike. */
export interface PlaceboBook {
  /** What dates without a change show, between as many runs a side as a change's own date is asked with; null where none can be tried. */
  readonly of: (wish: AdjustmentWish, window: ChangeWindow) => Placebo | null;
  /** Spread between runs beside weather, variety and the level of each stretch; null where that cannot be fitted. */
  readonly spreadOf: (measure: ChangedMeasure) => { readonly spread: number; readonly runs: number } | null;
}

/** All rows of a measure, what the covariates explain taken out. */
interface Tried {
  readonly moments: readonly number[];
  readonly stretches: readonly (number | null)[];
  readonly adjusted: Float64Array;
  readonly spread: number;
  readonly runs: number;
}

export function placeboBook(
  rowsOf: (measure: ChangedMeasure) => readonly ComparedRow[],
  events: readonly EventRow[],
  ground: ComparedGround,
): PlaceboBook {
  const known = new Map<string, Tried | null>();
  const tried = (wish: AdjustmentWish): Tried | null => {
    const key = [wish.measure, adjustmentKey(wish)].join();
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = tryMeasure(rowsOf(wish.measure), wish, events, ground);
    known.set(key, made);
    return made;
  };
  return {
    of(wish, { at, from, to }) {
      const found = tried(wish);
      if (found === null) return null;
      const { moments, stretches, adjusted } = found;
      const [first, changed, end] = [from, at, to].map((bound) => firstFrom(moments, bound)) as [
        number,
        number,
        number,
      ];
      const [before, after] = [adjusted.subarray(first, changed), adjusted.subarray(changed, end)];
      let each = Math.min(before.length, after.length, Math.floor(moments.length / 2));
      while (each > FEWEST_BESIDE && placeboDates(stretches, each) < WANTED_DATES) each -= 1;
      if (each < FEWEST_BESIDE) return null;
      const all = placeboDifferences(adjusted, stretches, each);
      if (all.length === 0) return null;
      const every = Math.ceil(all.length / MOST_DATES);
      const sizes = all
        .filter((_, place) => place % every === 0)
        .map(({ size }) => size)
        .sort((a, b) => Math.abs(b) - Math.abs(a));
      const ownSize = mean(after.subarray(0, each)) - mean(before.subarray(-each));
      const asLarge = sizes.filter((size) => Math.abs(size) >= Math.abs(ownSize)).length;
      return { dates: sizes.length, asLarge, sizes, runsEachSide: each, own: ownSize };
    },
    spreadOf(measure) {
      const found = tried({ measure, scope: "kiln", altered: null });
      return found === null ? null : { spread: found.spread, runs: found.runs };
    },
  };
}

/** The place of the first moment at or after `bound`. */
function firstFrom(moments: readonly number[], bound: number): number {
  const place = moments.findIndex((moment) => moment >= bound);
  return place < 0 ? moments.length : place;
}

function tryMeasure(
  rows: readonly ComparedRow[],
  wish: AdjustmentWish,
  events: readonly EventRow[],
  ground: ComparedGround,
): Tried | null {
  const { measure } = wish;
  const dated = datedRows(rows, "other", measure);
  const adjustment = adjustmentFor(
    dated.map(({ row }) => row),
    wish,
    ground,
  );
  const kept = new Set(adjustment.rows);
  const moments = dated.filter(({ row }) => kept.has(row)).map(({ at }) => at);
  if (moments.length === 0) return null;
  const season = adjustment.rows[0]?.model ? [] : seasonColumns(moments);
  const stretches = soundStretches(moments, measure, events, ground.timeZone);
  const found = withinStretches(
    [...adjustment.columns, ...season],
    adjustment.rows.map(({ value }) => value),
    stretches,
  );
  if (isFitFault(found)) return null;
  return {
    moments,
    stretches,
    adjusted: found.adjusted,
    spread: found.residualStandardDeviation,
    runs: stretches.filter((stretch) => stretch !== null).length,
  };
}

/** Stretches in which something was being mended are left out only where this share of the runs stays. */
const SHARE_LEFT = 0.4;

/**
 * Which stretch between events that can move the measure each moment lies in; null where that stretch ends with a repair or
 * a calibration, since what was mended then had begun on a day that nobody knows.
 */
function soundStretches(
  moments: readonly number[],
  measure: ChangedMeasure,
  events: readonly EventRow[],
  timeZone: string,
): readonly (number | null)[] {
  const breaks = events
    .filter((event) => isLasting(event) && touchedBy(event.scope).includes(measure))
    .map((event) => ({ begins: beginningOf(event, timeZone), mends: event.kind !== "change" }))
    .sort((a, b) => a.begins - b.begins);
  let next = 0;
  const stretches = moments.map((at) => {
    while (next < breaks.length && (breaks[next]?.begins ?? 0) <= at) next += 1;
    return { stretch: next, isMended: breaks[next]?.mends ?? false };
  });
  const left = stretches.filter(({ isMended }) => !isMended).length;
  const keepsAll = left < SHARE_LEFT * moments.length;
  return stretches.map(({ stretch, isMended }) => (isMended && !keepsAll ? null : stretch));
}
