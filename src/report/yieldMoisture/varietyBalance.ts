import { median } from "../../analysis/summary.ts";
import type { VarietyBalance } from "../controlChartResult.ts";
import { runLoss } from "../runLoss.ts";
import type { RunRow } from "../runRow.ts";

const middle = (values: readonly (number | null)[]): number | null => {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : median(known);
};

/** The mass balance of each variety, by name. A batch whose parts come out below 0 is counted and left as it is. */
export function varietyBalances(runs: readonly RunRow[]): readonly VarietyBalance[] {
  const varieties = [...new Set(runs.flatMap(({ variety }) => (variety === null ? [] : [variety])))].sort();
  return varieties.flatMap((variety): VarietyBalance[] => {
    const own = runs.filter((row) => row.variety === variety && row.dryMatterYieldPercent !== null);
    if (own.length === 0) return [];
    const losses = own.map(runLoss);
    const bases = [...new Set(own.flatMap(({ maltBasis }) => (maltBasis === null ? [] : [maltBasis])))].sort();
    return [
      {
        variety,
        batches: own.length,
        asIsYieldPercent: middle(own.map((row) => row.asIsYieldPercent)),
        dryMatterYieldPercent: middle(own.map((row) => row.dryMatterYieldPercent)),
        lossPercent: middle(losses.map((loss) => loss?.totalPercent ?? null)),
        rootletsPercent: middle(losses.map((loss) => loss?.rootletsPercent ?? null)),
        steepAndRespirationPercent: middle(losses.map((loss) => loss?.restPercent ?? null)),
        negative: losses.filter((loss) => loss !== null && (loss.restPercent ?? loss.totalPercent) < 0).length,
        basis: bases.join("; "),
      },
    ];
  });
}
