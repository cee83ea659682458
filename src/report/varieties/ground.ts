import type { ScaledLimits } from "../../analysis/consistency/consistency.ts";
import type { MeasureScale } from "../../analysis/consistency/measureScale.ts";
import type { PairSums } from "../../analysis/consistency/pairSums.ts";
import { spreadOfStep } from "../../analysis/consistency/predictiveMargin.ts";
import { readingStep } from "../../analysis/readingStep.ts";
import { mean } from "../../analysis/summary.ts";
import type { TargetRow } from "../targetRow.ts";
import type { Tolerance } from "../varietiesResult.ts";
import type { Batch } from "./batches.ts";
import { type JudgedBatch, sumsOf } from "./judged.ts";
import { scaleOf } from "./measureScales.ts";
import { insideTarget, tolerancesOf } from "./tolerances.ts";

/** Fewer batches than this are given no score, and a measure that fewer have does not count. */
export const FEWEST_BATCHES = 5;
/** A measure counts where at least this share of a variety's batches has it. */
const LEAST_SHARE = 0.5;

/** A measure that a variety is held against. */
export interface HeldMeasure {
  /** Place among the house's measures. */
  readonly at: number;
  readonly tolerance: Tolerance;
  readonly scale: MeasureScale;
  readonly limits: ScaledLimits;
}

export interface VarietyGround {
  readonly variety: string;
  readonly grain: string | null;
  readonly batches: readonly Batch[];
  /** The same batches on the measures' scales, with the measures that count; and their sums. */
  readonly judged: readonly JudgedBatch[];
  readonly sums: PairSums;
  /** Sums of every measure that has a tolerance. */
  readonly sumsOfAll: PairSums;
  /** Those that count for the score, and those that too few batches have but enough for a chance of their own. */
  readonly counted: readonly HeldMeasure[];
  readonly beside: readonly HeldMeasure[];
  readonly notCounted: readonly { readonly measure: string; readonly reason: string }[];
}

/** What all scores of a view stand on. */
export interface ScoringGround {
  readonly measures: readonly string[];
  readonly varieties: readonly VarietyGround[];
  readonly tolerancesFrom: readonly ("targets.csv" | "house.toml")[];
}

export const inside = (value: number, { low, high }: Tolerance): boolean =>
  (low === null || value >= low) && (high === null || value <= high);

/** Whether a batch met all of these; null where one of them was not recorded, or where there is none. */
function metAll(batch: Batch, measures: readonly HeldMeasure[]): boolean | null {
  const values = measures.map(({ tolerance }) => batch.valueOf(tolerance.measure));
  if (values.length === 0 || values.some((value) => value === null)) return null;
  return measures.every(({ tolerance }, at) => inside(values[at] as number, tolerance));
}

function byVariety(batches: readonly Batch[]): ReadonlyMap<string, readonly Batch[]> {
  const found = new Map<string, Batch[]>();
  for (const batch of batches) {
    const own = found.get(batch.variety);
    if (own) own.push(batch);
    else found.set(batch.variety, [batch]);
  }
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** The meter's step: smallest gap where all values lie on a grid of it, else 0. */
function stepOf(values: readonly number[]): number {
  if (values.length < FEWEST_BATCHES) return 0;
  const { step, onGrid } = readingStep(values);
  return onGrid && step !== null ? step : 0;
}

/**
 * Limits on the measure's scale. Evenness is judged about the variety's own centre, with as much room on either side as
 * lies between the target and the limit; where there is no target, the middle of the limits stands for it, or with one
 * limit only the middle of the house's varieties.
 */
function scaledLimits(
  { low, target, high }: Tolerance,
  scale: MeasureScale,
  usual: number,
  leastSpread: number,
): ScaledLimits {
  const onScale = (value: number | null, otherwise: number): number =>
    value === null ? otherwise : (scale.to(value) ?? otherwise);
  const from = onScale(low, Number.NEGATIVE_INFINITY);
  const to = onScale(high, Number.POSITIVE_INFINITY);
  const middle = Number.isFinite(from) && Number.isFinite(to) ? (from + to) / 2 : usual;
  const aim = onScale(target, middle);
  // A house whose usual lies beyond its own limit leaves nothing to measure evenness by.
  const room = (distance: number): number => (distance > 0 ? distance : Number.POSITIVE_INFINITY);
  return { low: from, high: to, below: room(aim - from), above: room(to - aim), leastSpread };
}

/** Puts the batches on the measures' scales and sorts out what each variety is held against. */
export function scoringGround(
  batches: readonly Batch[],
  targets: readonly TargetRow[],
  halfWidths: Readonly<Record<string, number>>,
): ScoringGround {
  const insideTargets = targets.map(insideTarget);
  const groups = [...byVariety(batches)].map(([variety, own]) => {
    const grain = own.find(({ row }) => row.grain !== null)?.row.grain ?? null;
    return { variety, grain, own, ...tolerancesOf(variety, grain, insideTargets, halfWidths) };
  });
  const measures = [...new Set(groups.flatMap(({ found }) => found.map(({ tolerance }) => tolerance.measure)))].sort();
  const scales = measures.map(scaleOf);
  const steps = measures.map((measure) =>
    stepOf(batches.map((batch) => batch.valueOf(measure)).filter((value) => value !== null)),
  );
  const read = groups.map((group) => {
    const every = group.own.map((batch): JudgedBatch => {
      const { run, lot } = batch.row;
      const row = Float64Array.from(measures, (measure, at) => {
        const value = batch.valueOf(measure);
        return value === null ? Number.NaN : (scales[at]?.to(value) ?? Number.NaN);
      });
      return { run, lot, at: batch.at, row, met: null };
    });
    return { ...group, every, sumsOfAll: sumsOf(measures.length, every) };
  });
  const usual = measures.map((_, at) => {
    const means = read.map(({ sumsOfAll }) => sumsOfAll.mean(at)).filter((value) => !Number.isNaN(value));
    return means.length === 0 ? 0 : mean(means);
  });

  const varieties = read.map((group): VarietyGround => {
    const { variety, grain, own, every, sumsOfAll, found } = group;
    const notCounted = [...group.notCounted];
    const counted: HeldMeasure[] = [];
    const beside: HeldMeasure[] = [];
    for (const { tolerance } of found) {
      const at = measures.indexOf(tolerance.measure);
      const scale = scales[at] as MeasureScale;
      const count = sumsOfAll.count(at);
      const have = `${count} of ${own.length} batches have it`;
      if (count < FEWEST_BATCHES) {
        const reason = count === 0 ? "no batch has it" : `${have}; a score needs ${FEWEST_BATCHES}`;
        notCounted.push({ measure: tolerance.measure, reason });
        continue;
      }
      const leastSpread = spreadOfStep(steps[at] as number) * scale.slope(scale.from(sumsOfAll.mean(at)));
      const held = { at, tolerance, scale, limits: scaledLimits(tolerance, scale, usual[at] as number, leastSpread) };
      if (count >= LEAST_SHARE * own.length) counted.push(held);
      else {
        beside.push(held);
        notCounted.push({
          measure: tolerance.measure,
          reason: `${have}; a score takes what at least half of them have`,
        });
      }
    }
    const places = new Set(counted.map(({ at }) => at));
    const judged = every.map(
      (batch, index): JudgedBatch => ({
        ...batch,
        row: batch.row.map((value, at) => (places.has(at) ? value : Number.NaN)),
        met: metAll(own[index] as Batch, counted),
      }),
    );
    const sums = sumsOf(measures.length, judged);
    return { variety, grain, batches: own, judged, sums, sumsOfAll, counted, beside, notCounted };
  });
  const from = new Set(groups.flatMap(({ found }) => found.map((tolerance) => tolerance.from)));
  return { measures, varieties, tolerancesFrom: [...from].sort().reverse() };
}
