import { holmAdjusted } from "../../analysis/holmAdjusted.ts";
import { mean } from "../../analysis/summary.ts";
import { type WithinGroups, withinGroups } from "../../analysis/withinGroups.ts";
import type { EventRow } from "../eventRow.ts";
import type { RunRow } from "../runRow.ts";
import type { VarietyReason } from "../varietiesResult.ts";
import type { LotsOfMeasure } from "./lotSpreads.ts";
import { type ScaledValue, seasonAt, spansSeasons } from "./season.ts";

const CERTAIN = 0.05;
/** A change is judged where so many batches of the same lots lie on either side of it. */
const FEWEST_EACH_SIDE = 4;
const FEWEST_BATCHES = 12;

/** Where in the house an event works, by its scope; a measure can be moved by nothing that comes after it. */
const stageOfScope: Readonly<Record<string, number>> = {
  grain: 0,
  steep: 1,
  germination: 2,
  kiln: 3,
  thermostat: 3,
  cleaning: 4,
  laboratory: 5,
  scale: 1,
  other: 1,
};
const stageOfMeasure: Readonly<Record<string, number>> = {
  steep_out_moisture_pct: 1,
  acrospire_mean: 2,
  acrospire_overgrown_pct: 2,
  kiln_hours_over_expected: 3,
  final_moisture_pct: 3,
  dry_yield_pct: 4,
};
const LABORATORY = 5;
const KILN = 3;
const kindsThatLast = ["change", "repair", "calibration"];

/** When a batch met what the scope is about. */
function momentOf(row: RunRow, scope: string): number | null {
  if (scope === "germination") return row.germinationStartedAt;
  if (scope === "kiln" || scope === "thermostat") return row.loadedAt;
  return scope === "cleaning" || scope === "laboratory" ? row.unloadedAt : row.steepStartedAt;
}

export interface ProcessGround {
  readonly events: readonly EventRow[];
  /** The kiln thermostat's offset in the drying hold by load, kelvins. */
  readonly offsets: ReadonlyMap<string, number>;
}

interface Found {
  readonly measured: LotsOfMeasure;
  readonly goesWith: string;
  readonly fit: WithinGroups;
  /** What one step of the reason is, in its columns' units. */
  readonly step: readonly number[];
}

type Value = ScaledValue & { readonly lot: string };

/** A change compares batches of one lot before it with others of the same lot after it. */
function eventFit({ lots }: LotsOfMeasure, event: EventRow): WithinGroups | null {
  const across = lots.flatMap(({ lot, values }) => {
    const sides = values.flatMap(({ batch, adjusted }) => {
      const moment = momentOf(batch.row, event.scope);
      return moment === null ? [] : [{ lot, adjusted, after: moment >= event.on ? 1 : 0 }];
    });
    return sides.some(({ after }) => after !== sides[0]?.after) ? sides : [];
  });
  const after = across.filter((value) => value.after === 1).length;
  if (after < FEWEST_EACH_SIDE || across.length - after < FEWEST_EACH_SIDE) return null;
  return withinGroups(
    across.map(({ lot }) => lot),
    [across.map((value) => value.after)],
    across.map(({ adjusted }) => adjusted),
  );
}

function thermostatFit(values: readonly Value[], offsets: ReadonlyMap<string, number>) {
  const known = values.flatMap((value) => {
    const { load } = value.batch.row;
    const offset = load === null ? undefined : offsets.get(load);
    return offset === undefined ? [] : [{ ...value, offset }];
  });
  if (known.length < FEWEST_BATCHES) return null;
  const fit = withinGroups(
    known.map(({ lot }) => lot),
    [known.map(({ offset }) => offset)],
    known.map(({ adjusted }) => adjusted),
  );
  const all = known.map(({ offset }) => offset);
  return fit === null ? null : { fit, step: [Math.max(...all) - Math.min(...all)] };
}

/** From the wave's trough to its crest, within lots. */
function seasonFit(values: readonly Value[]) {
  const moments = values.map(({ batch }) => batch.at);
  if (!spansSeasons(moments)) return null;
  const waves = moments.map(seasonAt);
  const fit = withinGroups(
    values.map(({ lot }) => lot),
    [waves.map(([cosine]) => cosine), waves.map(([, sine]) => sine)],
    values.map(({ scaled }) => scaled),
  );
  if (fit === null) return null;
  const [cosine = 0, sine = 0] = fit.coefficients;
  const half = Math.sqrt(cosine * cosine + sine * sine);
  return half > 0 ? { fit, step: [(2 * cosine) / half, (2 * sine) / half] } : null;
}

/**
 * What of the process goes with a measure among batches of the same lot, so that the grain as received cannot be what
 * moved: lasting changes before against after, the thermostat's offset, and the season. A change that fell between two
 * lots cannot be told from the grain and is not named. Corrected over all that was looked at (Holm); the surest first.
 */
export function processReasons(
  measures: readonly LotsOfMeasure[],
  { events, offsets }: ProcessGround,
): readonly VarietyReason[] {
  const found = measures.flatMap((measured): Found[] => {
    const { measure } = measured.held.tolerance;
    const stage = stageOfMeasure[measure] ?? LABORATORY;
    const values = measured.lots.flatMap(({ lot, values: own }) => own.map((value): Value => ({ ...value, lot })));
    const lasting = events.filter(
      ({ kind, scope }) => kindsThatLast.includes(kind) && (stageOfScope[scope] ?? Number.POSITIVE_INFINITY) <= stage,
    );
    const changes = lasting.flatMap((event): Found[] => {
      const fit = eventFit(measured, event);
      return fit === null ? [] : [{ measured, goesWith: event.what, fit, step: [1] }];
    });
    const thermostat = stage < KILN ? null : thermostatFit(values, offsets);
    const season = seasonFit(values);
    return [
      ...changes,
      ...(thermostat === null ? [] : [{ measured, goesWith: "the kiln thermostat’s offset", ...thermostat }]),
      ...(season === null ? [] : [{ measured, goesWith: "the season", ...season }]),
    ];
  });
  const corrected = holmAdjusted(found.map(({ fit }) => fit.p));
  return found
    .map((one, at) => ({ ...one, p: corrected[at] as number }))
    .filter(({ p }) => p < CERTAIN)
    .sort((a, b) => a.p - b.p)
    .map(({ measured: { held, lots }, goesWith, fit, step }): VarietyReason => {
      const { estimate, low, high } = fit.effect(step);
      const centre = mean(lots.flatMap(({ values }) => values.map(({ scaled }) => scaled)));
      const slope = held.scale.slope(held.scale.from(centre));
      return {
        kind: "process",
        measure: held.tolerance.measure,
        lot: null,
        how: "level",
        size: { estimate: estimate / slope, low: low / slope, high: high / slope },
        goesWith,
      };
    });
}
