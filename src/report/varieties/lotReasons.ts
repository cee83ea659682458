import type { Interval } from "../../analysis/regressionFit.ts";
import { mean } from "../../analysis/summary.ts";
import { withinGroups } from "../../analysis/withinGroups.ts";
import type { EventRow } from "../eventRow.ts";
import type { SpreadSplit, VarietyReason } from "../varietiesResult.ts";
import { grainApart } from "./grainWords.ts";
import { houseMovedToo, loggedThen } from "./houseThen.ts";
import type { LotsOfMeasure } from "./lotSpreads.ts";
import type { LotRow } from "./readLots.ts";
import { seasonAt } from "./season.ts";

interface Standing {
  readonly lot: string;
  readonly how: "level" | "spread";
  readonly measured: LotsOfMeasure;
  readonly p: number;
}

/** Each lot that stands out, by the measure and the way in which it does so most surely. */
function standing(measures: readonly LotsOfMeasure[], splits: readonly SpreadSplit[]): readonly Standing[] {
  const best = new Map<string, Standing>();
  for (const measured of measures) {
    const split = splits.find(({ measure }) => measure === measured.held.tolerance.measure);
    for (const { lot, differs, differsP, uneven, unevenP } of split?.lots ?? []) {
      const own: Standing[] = [];
      if (differs && differsP !== null) own.push({ lot, how: "level", measured, p: differsP });
      if (uneven && unevenP !== null) own.push({ lot, how: "spread", measured, p: unevenP });
      for (const one of own) if (one.p < (best.get(lot)?.p ?? Number.POSITIVE_INFINITY)) best.set(lot, one);
    }
  }
  return [...best.values()].sort((a, b) => a.p - b.p || (a.lot < b.lot ? -1 : 1));
}

/**
 * The lot's level less that of the variety's other lots, in the measure's unit; estimated together with the house's season,
 * which would else take a part of it for its own.
 */
function levelSize({ lots, held, house, variety, seasonTakenOut }: LotsOfMeasure, lot: string): Interval | null {
  const all = [...house].flatMap(([name, values]) => values.map((value) => ({ name, ...value })));
  const waves = all.map(({ batch }) => seasonAt(batch.at));
  const inLot = all.map(({ name, batch }) => (name === variety && batch.row.lot === lot ? 1 : 0));
  const season = seasonTakenOut ? [waves.map(([cosine]) => cosine), waves.map(([, sine]) => sine)] : [];
  const fit = withinGroups(
    all.map(({ name }) => name),
    [inLot, ...season],
    all.map(({ scaled }) => scaled),
  );
  if (fit === null) return null;
  const { estimate, low, high } = fit.effect([1, ...season.map(() => 0)]);
  const own = lots.flatMap(({ values }) => values.map(({ scaled }) => scaled));
  const slope = held.scale.slope(held.scale.from(mean(own)));
  return { estimate: estimate / slope, low: low / slope, high: high / slope };
}

export interface LotReasons {
  readonly lot: string;
  /** False where the whole house moved in the lot's weeks: then nothing is said of its grain. */
  readonly ofTheLot: boolean;
  readonly reasons: readonly VarietyReason[];
}

/**
 * The lots that stand out, each with what goes with it: what of its grain sets it apart, or what was logged of the
 * process where other varieties moved with it.
 */
export function lotReasons(
  measures: readonly LotsOfMeasure[],
  splits: readonly SpreadSplit[],
  grain: ReadonlyMap<string, LotRow>,
  events: readonly EventRow[],
): readonly LotReasons[] {
  const worked = new Set(measures.flatMap(({ lots }) => lots.map(({ lot }) => lot)));
  return standing(measures, splits).map(({ lot, how, measured }): LotReasons => {
    const { measure } = measured.held.tolerance;
    const size = how === "level" ? levelSize(measured, lot) : null;
    const common = { measure, lot, how };
    if (houseMovedToo(measured, lot, how)) {
      const goesWith = loggedThen(measured, lot, events);
      return { lot, ofTheLot: false, reasons: [{ ...common, kind: "process", size, goesWith }] };
    }
    const row = grain.get(lot);
    const others = [...worked].flatMap((other) => (other === lot ? [] : (grain.get(other) ?? [])));
    const apart = row === undefined ? [] : grainApart(row, others);
    return {
      lot,
      ofTheLot: true,
      reasons: [
        { ...common, kind: "lot", size, goesWith: null },
        ...apart.map((goesWith): VarietyReason => ({ ...common, kind: "grain", size: null, goesWith })),
      ],
    };
  });
}
