import type { MeasuredBatches } from "../../figures/varieties/batchStrips.ts";
import type { LotsOfMeasure } from "../../figures/varieties/lotsFigure.ts";
import type { MethodGroup } from "../../findings/varieties/labSentences.ts";
import { standingOut } from "../../findings/varieties/lotSentences.ts";
import type { MeasureScore, Tolerance, VarietyDetail, VarietyScore } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";

const NO_LIMIT = { low: null, target: null, high: null } as const;
/** Lots are drawn open by this many measures at most, those that drag most, besides any that a lot stands out by. */
const OPEN = 2;
/** What a brewer asks of a certificate first: always drawn where there are two results. */
const ALWAYS = ["extract_fine_dry_pct", "colour_ebc", "diastatic_power_wk"];

const everyMeasure = (score: VarietyScore | undefined): readonly MeasureScore[] =>
  score === undefined ? [] : [...score.measures, ...score.beside];

function toleranceOf(score: VarietyScore | undefined, measure: string): Pick<Tolerance, "low" | "target" | "high"> {
  return everyMeasure(score).find(({ tolerance }) => tolerance.measure === measure)?.tolerance ?? NO_LIMIT;
}

/** The batches of a variety by the measures of the house's own logs, in the order in which a certificate is read. */
export function ownMeasured({ measures, batchesInOrder }: VarietyScore): readonly MeasuredBatches[] {
  return measures.flatMap(({ tolerance }, i) =>
    maltMeasure(tolerance.measure).fromLaboratory
      ? []
      : [
          {
            measure: tolerance.measure,
            tolerance,
            batches: batchesInOrder.flatMap(({ run, at, values }) => {
              const value = values[i] ?? null;
              return value === null ? [] : [{ run, at, value }];
            }),
          },
        ],
  );
}

/** Certificates of one set of methods: what has a tolerance, and what every brewer asks for. */
export function labMeasured({ rows }: MethodGroup, score: VarietyScore | undefined): readonly MeasuredBatches[] {
  const judged = everyMeasure(score)
    .map(({ tolerance }) => tolerance.measure)
    .filter((name) => maltMeasure(name).fromLaboratory);
  return [...new Set([...ALWAYS, ...judged])]
    .map((measure) => ({
      measure,
      tolerance: toleranceOf(score, measure),
      batches: rows.flatMap(({ run, testedOn, values }) => {
        const value = values[measure] ?? null;
        return value === null ? [] : [{ run, at: testedOn, value }];
      }),
    }))
    .filter(({ batches }) => batches.length > 1);
}

/** The measures by which lots are shown open, and the rest. */
export function lotsOfMeasures(
  score: VarietyScore | undefined,
  detail: VarietyDetail | undefined,
): { readonly first: readonly LotsOfMeasure[]; readonly others: readonly LotsOfMeasure[] } {
  const order = everyMeasure(score).map(({ tolerance }) => tolerance.measure);
  const rank = (name: string): number => {
    const found = order.indexOf(name);
    return found < 0 ? order.length : found;
  };
  const all = [...(detail?.splits ?? [])]
    .filter(({ lots }) => lots.length >= 2)
    .sort((a, b) => standingOut(b).length - standingOut(a).length || rank(a.measure) - rank(b.measure))
    .map((split) => ({ split, tolerance: toleranceOf(score, split.measure) }));
  const open = Math.max(OPEN, all.filter(({ split }) => standingOut(split).length > 0).length);
  return { first: all.slice(0, open), others: all.slice(open) };
}
