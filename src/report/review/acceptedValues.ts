import type { Accepted } from "../reviewResult.ts";
import type { RunRow } from "../runRow.ts";
import { nearestTarget, type TargetRow } from "../targetRow.ts";

/** What the month's figure draws and targets.csv can set. */
const MEASURES = ["final_moisture_pct", "dry_yield_pct", "steep_out_moisture_pct", "acrospire_mean"] as const;

/** What the house accepts of each measure in each variety it has had. */
export function acceptedValues(targets: readonly TargetRow[], runs: readonly RunRow[]): readonly Accepted[] {
  const grains = new Map(runs.flatMap(({ variety, grain }) => (variety === null ? [] : [[variety, grain] as const])));
  return MEASURES.flatMap((measure) =>
    [...grains].toSorted().flatMap(([variety, grain]) => {
      const found = nearestTarget(targets, measure, variety, grain);
      return found === null
        ? []
        : [{ measure, variety, low: found.low, target: found.target, high: found.high } satisfies Accepted];
    }),
  );
}
