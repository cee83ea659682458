import { foretell } from "../../analysis/consistency/consistency.ts";
import type { LoadRow } from "../loadRow.ts";
import type { LabRow, VarietyDetail } from "../varietiesResult.ts";
import { grainReasons } from "./grainReasons.ts";
import { FEWEST_BATCHES, type ScoringGround, type VarietyGround } from "./ground.ts";
import { correlationOf, forecastGround, seenOf, sumsOf } from "./judged.ts";
import { lotReasons } from "./lotReasons.ts";
import { lotSpreads, lotsOfMeasure } from "./lotSpreads.ts";
import { type ProcessGround, processReasons } from "./processReasons.ts";
import { quarters } from "./quarters.ts";
import type { LotRow } from "./readLots.ts";
import { type AdjustedMeasure, withoutSeason } from "./season.ts";

export interface DetailsGround extends ProcessGround {
  readonly lab: readonly LabRow[];
  readonly lots: ReadonlyMap<string, LotRow>;
  readonly loads: ReadonlyMap<string, LoadRow>;
  /** Only spreads and the lots that stand out are wanted; quarters, other reasons and scores without a lot are left out. */
  readonly lotsOnly?: boolean;
}

/** So many of the lots that stand out most surely are tried without. */
const MOST_LEFT_OUT = 3;

/** The variety's *on target*, in 100, were the lot not there; null where too little is left. */
function scoreWithoutLot(varieties: readonly VarietyGround[], place: number, lot: string): VarietyDetail["withoutLot"] {
  const { judged, sums, counted } = varieties[place] as VarietyGround;
  const left = judged.filter((batch) => batch.lot !== lot);
  const batches = left.filter(({ met }) => met !== null).length;
  if (batches < FEWEST_BATCHES) return null;
  const own = sumsOf(sums.columns, left);
  const groups = varieties.map((variety, at) => (at === place ? own : variety.sums));
  const { others, limits, factor } = forecastGround(groups, place, counted, correlationOf(groups));
  const seen = counted.map(({ at }) => seenOf(own, at));
  const forecast = foretell(seen, others, limits, factor, 509);
  return forecast === null ? null : { lot, onTarget: 100 * forecast.onTarget, batches };
}

/** Where each variety's spread lies, and why, as far as the logs tell. */
export function varietyDetails(ground: ScoringGround, about: DetailsGround): readonly VarietyDetail[] {
  const { varieties } = ground;
  const adjusted = new Map<string, AdjustedMeasure>();
  return varieties.map((variety, place) => {
    const measured = (held: (typeof variety.counted)[number]) => {
      const { measure } = held.tolerance;
      const known = adjusted.get(measure) ?? withoutSeason(ground, held);
      adjusted.set(measure, known);
      return lotsOfMeasure(held, known, variety.variety);
    };
    const counted = variety.counted.map(measured);
    const splits = lotSpreads(counted);
    const standing = lotReasons(counted, splits, about.lots, about.events);
    const runs = new Set(variety.batches.map(({ row }) => row.run));
    const brief = {
      variety: variety.variety,
      splits: [...splits, ...lotSpreads(variety.beside.map(measured))],
      lab: about.lab.filter(({ run }) => runs.has(run)),
    };
    if (about.lotsOnly === true) {
      return { ...brief, quarters: null, reasons: standing.flatMap(({ reasons }) => reasons), withoutLot: null };
    }
    const without = standing
      .filter(({ ofTheLot }) => ofTheLot)
      .slice(0, MOST_LEFT_OUT)
      .flatMap(({ lot }) => scoreWithoutLot(varieties, place, lot) ?? [])
      .sort((a, b) => b.onTarget - a.onTarget);
    const withoutLot = without[0] ?? null;
    // The lot that costs most is named first.
    const first = standing.filter(({ lot }) => lot === withoutLot?.lot);
    const rest = standing.filter(({ lot }) => lot !== withoutLot?.lot);
    return {
      ...brief,
      quarters: quarters(variety, about.loads, about.lots),
      reasons: [
        ...[...first, ...rest].flatMap(({ reasons }) => reasons),
        ...grainReasons(counted, about.lots),
        ...processReasons(counted, about),
      ],
      withoutLot,
    };
  });
}
