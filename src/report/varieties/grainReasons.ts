import { holmAdjusted } from "../../analysis/holmAdjusted.ts";
import { mean } from "../../analysis/summary.ts";
import { withinGroups } from "../../analysis/withinGroups.ts";
import type { VarietyReason } from "../varietiesResult.ts";
import { grainNumbers } from "./grainWords.ts";
import type { LotsOfMeasure } from "./lotSpreads.ts";
import type { LotRow } from "./readLots.ts";

/** A line through fewer lots than this follows single lots. */
const FEWEST_LOTS = 6;
const CERTAIN = 0.05;

/**
 * Measures whose lot means go with a number of the grain, over the lots as the units: what tells lots apart is theirs, and
 * batches of one lot do not say it again. The size is from the lowest to the highest lot; corrected over all that was
 * looked at (Holm).
 */
export function grainReasons(
  measures: readonly LotsOfMeasure[],
  grain: ReadonlyMap<string, LotRow>,
): readonly VarietyReason[] {
  const looked = measures.flatMap(({ held, lots }) =>
    Object.values(grainNumbers).flatMap(({ words, of }) => {
      const known = lots.flatMap(({ lot, values }) => {
        const row = grain.get(lot);
        const number = row === undefined ? null : of(row);
        return number === null ? [] : [{ number, mean: mean(values.map(({ adjusted }) => adjusted)) }];
      });
      if (known.length < FEWEST_LOTS) return [];
      const numbers = known.map(({ number }) => number);
      const means = known.map((lot) => lot.mean);
      const line = withinGroups(new Array(known.length).fill(0), [numbers], means);
      if (line === null) return [];
      const slope = held.scale.slope(held.scale.from(mean(means)));
      return [{ held, words, line, step: (Math.max(...numbers) - Math.min(...numbers)) / slope }];
    }),
  );
  const corrected = holmAdjusted(looked.map(({ line }) => line.p));
  return looked
    .map((one, at) => ({ ...one, p: corrected[at] as number }))
    .filter(({ p }) => p < CERTAIN)
    .sort((a, b) => a.p - b.p)
    .map(({ held, words, line, step }): VarietyReason => {
      const { estimate, low, high } = line.effect([step]);
      return {
        kind: "grain",
        measure: held.tolerance.measure,
        lot: null,
        how: "level",
        size: { estimate, low, high },
        goesWith: words,
      };
    });
}
