import { withinGroups } from "../../analysis/withinGroups.ts";
import type { Batch } from "./batches.ts";
import type { HeldMeasure, ScoringGround } from "./ground.ts";

const DAY = 86_400_000;
const YEAR = 365.2425 * DAY;
/** Over less than about a year a season cannot be told from a drift. */
const LEAST_SPAN = 330 * DAY;
const FEWEST_BATCHES_FOR_SEASON = 24;

/** One wave a year: its two columns at a moment. */
export function seasonAt(moment: number): readonly [number, number] {
  const turn = (2 * Math.PI * moment) / YEAR;
  return [Math.cos(turn), Math.sin(turn)];
}

export const spansSeasons = (moments: readonly number[]): boolean =>
  moments.length >= FEWEST_BATCHES_FOR_SEASON && Math.max(...moments) - Math.min(...moments) >= LEAST_SPAN;

/** A batch's value of one measure on its scale. */
export interface ScaledValue {
  readonly batch: Batch;
  readonly raw: number;
  readonly scaled: number;
  /** The same with the house's usual season taken out; as `scaled` where none can be told. */
  readonly adjusted: number;
}

export interface AdjustedMeasure {
  readonly seasonTakenOut: boolean;
  /** By variety. */
  readonly values: ReadonlyMap<string, readonly ScaledValue[]>;
}

/**
 * The values of a measure with the house's season taken out: one wave a year fitted to all varieties at once, each with a
 * level of its own. A lot is worked within a few months, so that otherwise winter would pass for a property of the grain.
 * The wave is fitted wherever the logs span a year, and not because it shows.
 */
export function withoutSeason({ varieties }: ScoringGround, { tolerance, scale }: HeldMeasure): AdjustedMeasure {
  const all = varieties.flatMap(({ batches }) =>
    batches.flatMap((batch) => {
      const raw = batch.valueOf(tolerance.measure);
      const scaled = raw === null ? null : scale.to(raw);
      return raw === null || scaled === null ? [] : [{ batch, raw, scaled }];
    }),
  );
  const moments = all.map(({ batch }) => batch.at);
  const waves = moments.map(seasonAt);
  const fit = spansSeasons(moments)
    ? withinGroups(
        all.map(({ batch }) => batch.variety),
        [waves.map(([cosine]) => cosine), waves.map(([, sine]) => sine)],
        all.map(({ scaled }) => scaled),
      )
    : null;
  const [cosine = 0, sine = 0] = fit?.coefficients ?? [];
  const values = new Map<string, ScaledValue[]>();
  all.forEach((value, at) => {
    const [c, s] = waves[at] as readonly [number, number];
    const own = values.get(value.batch.variety) ?? [];
    values.set(value.batch.variety, own);
    own.push({ ...value, adjusted: value.scaled - cosine * c - sine * s });
  });
  return { seasonTakenOut: fit !== null, values };
}
