import type { PlaceboSteps } from "../../analysis/beforeAfter/placeboSteps.ts";
import { placeboSteps } from "../../analysis/beforeAfter/placeboSteps.ts";
import type { StepEffect } from "../../analysis/beforeAfter/stepEffect.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import type { ChangedMeasure, Placebo } from "../changesResult.ts";
import type { EventRow } from "../eventRow.ts";
import { beginningOf, isLasting } from "./changeWindow.ts";
import type { ComparedGround, ComparedRow } from "./comparedRow.ts";
import { type AdjustmentWish, adjustmentFor, adjustmentKey } from "./covariates.ts";
import { seasonColumns } from "./season.ts";
import { standsAt } from "./standsAt.ts";
import { touchedBy } from "./touchedMeasures.ts";

/** Steps at dates with fewer runs than this beside them are mostly noise. */
const FEWEST_BESIDE = 8;
/** More dates than this tell no more: neighbouring ones share nearly all of their runs. */
const MOST_DATES = 200;

/** The house's own ups and downs in each measure, worked out once for all changes that are adjusted alike. */
export interface PlaceboBook {
  /** What chance alone shows, at the size it would have beside as many runs as this comparison; null where it cannot be tried. */
  readonly of: (wish: AdjustmentWish, effect: StepEffect) => Placebo | null;
  /** Spread between runs beside weather, variety and the level of each stretch; null where that cannot be fitted. */
  readonly spreadOf: (measure: ChangedMeasure) => { readonly spread: number; readonly runs: number } | null;
}

export function placeboBook(
  rowsOf: (measure: ChangedMeasure) => readonly ComparedRow[],
  events: readonly EventRow[],
  ground: ComparedGround,
): PlaceboBook {
  const known = new Map<string, { readonly steps: PlaceboSteps; readonly runs: number } | null>();

  const tried = (wish: AdjustmentWish): { readonly steps: PlaceboSteps; readonly runs: number } | null => {
    const { measure } = wish;
    const key = [measure, adjustmentKey(wish)].join();
    const found = known.get(key);
    if (found !== undefined) return found;
    const dated = rowsOf(measure)
      .flatMap((row) => {
        const stood = standsAt(row, "other", measure);
        return stood === null ? [] : [{ row, at: stood.at }];
      })
      .sort((a, b) => a.at - b.at || (a.row.name < b.row.name ? -1 : 1));
    const adjustment = adjustmentFor(
      dated.map(({ row }) => row),
      wish,
      ground,
    );
    const kept = new Set(adjustment.rows);
    const moments = dated.filter(({ row }) => kept.has(row)).map(({ at }) => at);
    const season = adjustment.rows[0]?.model ? [] : seasonColumns(moments);
    const sound = soundStretches(moments, measure, events, ground.timeZone);
    const places = sound.flatMap((stretch, place) => (stretch === null ? [] : [place]));
    const steps =
      places.length === 0
        ? null
        : placeboSteps(
            [...adjustment.columns, ...season].map((column) => ({
              ...column,
              values: places.map((place) => column.values[place] as number),
            })),
            places.map((place) => adjustment.rows[place]?.value ?? 0),
            places.map((place) => sound[place] ?? 0),
            FEWEST_BESIDE,
          );
    const made = steps === null || isFitFault(steps) ? null : { steps, runs: places.length };
    known.set(key, made);
    return made;
  };

  return {
    of(wish, { step }) {
      const found = tried(wish);
      if (found === null || found.steps.steps.length === 0) return null;
      const { steps } = found.steps;
      const every = Math.ceil(steps.length / MOST_DATES);
      const sizes = steps
        .filter((_, at) => at % every === 0)
        .map(({ t }) => t * step.standardError)
        .sort((a, b) => Math.abs(b) - Math.abs(a));
      const asLarge = sizes.filter((size) => Math.abs(size) >= Math.abs(step.estimate)).length;
      return { dates: sizes.length, asLarge, sizes };
    },
    spreadOf(measure) {
      const found = tried({ measure, scope: "kiln", altered: null });
      return found === null ? null : { spread: found.steps.residualStandardDeviation, runs: found.runs };
    },
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
