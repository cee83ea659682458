import type { EventRow } from "../eventRow.ts";
import type { KilnHoursResult } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";
import type { RunRow } from "../runRow.ts";
import type { TargetRow } from "../targetRow.ts";
import type { LabRow, VarietiesResult } from "../varietiesResult.ts";
import { batchesOf, hoursOverExpected, labByRun } from "./batches.ts";
import { varietyDetails } from "./details.ts";
import { scoringGround } from "./ground.ts";
import { comparePeriods } from "./periods.ts";
import type { LotRow } from "./readLots.ts";
import { scoreVarieties } from "./scores.ts";

export interface VarietiesOptions {
  readonly targets: readonly TargetRow[];
  /** Half-widths about the target by measure, from house.toml. */
  readonly halfWidths: Readonly<Record<string, number>>;
  readonly samples: ReadonlyMap<string, readonly number[]>;
  readonly lab: readonly LabRow[];
  readonly lots: readonly LotRow[];
  readonly kilnHours: KilnHoursResult;
  readonly loads: readonly LoadRow[];
  readonly events: readonly EventRow[];
  /** The kiln thermostat's offset in the drying hold by load, kelvins. */
  readonly offsets: ReadonlyMap<string, number>;
  /** Runs left out by hand. */
  readonly without: ReadonlySet<string>;
  readonly timeZone: string;
  /** Leave out what no fact of a month's review looks at (`varietyDetails`). */
  readonly lotsOnly?: boolean;
}

/**
 * Consistency of each variety, and where its spread starts, over the runs handed over. Intervals and back-tests take
 * longer than all else together and so come afterwards (`followVarieties`).
 */
export function analyseVarieties(runs: readonly RunRow[], options: VarietiesOptions): VarietiesResult {
  const {
    targets,
    halfWidths,
    samples,
    lab,
    lots,
    kilnHours,
    loads,
    events,
    offsets,
    without,
    timeZone,
    lotsOnly = false,
  } = options;
  const batches = batchesOf(runs, { samples, lab: labByRun(lab), hoursOver: hoursOverExpected(kilnHours), without });
  const ground = scoringGround(batches, targets, halfWidths);
  const scores = scoreVarieties(ground);
  const until = batches.at(-1)?.at;
  return {
    scores,
    details: varietyDetails(ground, {
      events,
      offsets,
      lab,
      lots: new Map(lots.map((lot) => [lot.lot, lot])),
      loads: new Map(loads.map((load) => [load.load, load])),
      lotsOnly,
    }),
    backTest: null,
    backTestOfEven: null,
    followed: false,
    periods: until === undefined || lotsOnly ? [] : comparePeriods(ground, until, timeZone),
    tolerancesFrom: ground.tolerancesFrom,
    tooLittle: tooLittle(batches.length, ground.measures.length),
  };
}

function tooLittle(batches: number, measures: number): string | null {
  if (batches === 0) return "No batch of a known variety is off the kiln yet.";
  return measures === 0
    ? "Neither targets.csv nor house.toml sets a tolerance that a batch could be held against."
    : null;
}
