import type { KilnHoursResult } from "../kilnHoursResult.ts";
import type { RunRow } from "../runRow.ts";
import type { TargetRow } from "../targetRow.ts";
import type { LabRow, VarietiesResult } from "../varietiesResult.ts";
import { batchesOf, hoursOverExpected, labByRun } from "./batches.ts";
import { scoringGround } from "./ground.ts";
import { scoreVarieties } from "./scores.ts";

export interface VarietiesOptions {
  readonly targets: readonly TargetRow[];
  /** Half-widths about the target by measure, from house.toml. */
  readonly halfWidths: Readonly<Record<string, number>>;
  readonly samples: ReadonlyMap<string, readonly number[]>;
  readonly lab: readonly LabRow[];
  readonly kilnHours: KilnHoursResult;
  /** Runs left out by hand. */
  readonly without: ReadonlySet<string>;
}

/**
 * Consistency of each variety, and where its spread starts, over the runs handed over. Intervals and back-tests take
 * longer than all else together and so come afterwards (`followVarieties`).
 */
export function analyseVarieties(runs: readonly RunRow[], options: VarietiesOptions): VarietiesResult {
  const { targets, halfWidths, samples, lab, kilnHours, without } = options;
  const batches = batchesOf(runs, { samples, lab: labByRun(lab), hoursOver: hoursOverExpected(kilnHours), without });
  const ground = scoringGround(batches, targets, halfWidths);
  const scores = scoreVarieties(ground);
  return {
    scores,
    details: [],
    backTest: null,
    backTestOfEven: null,
    followed: false,
    periods: [],
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
