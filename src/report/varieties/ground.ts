import type { ScaledLimits } from "../../analysis/consistency/consistency.ts";
import type { MeasureScale } from "../../analysis/consistency/measureScale.ts";
import { PairSums } from "../../analysis/consistency/pairSums.ts";
import { spreadOfStep } from "../../analysis/consistency/predictiveMargin.ts";
import { readingStep } from "../../analysis/readingStep.ts";
import type { TargetRow } from "../targetRow.ts";
import type { Tolerance } from "../varietiesResult.ts";
import type { Batch } from "./batches.ts";
import { scaleOf } from "./measureScales.ts";
import { type FoundTolerance, insideTarget, tolerancesOf } from "./tolerances.ts";

/** Fewer batches than this are given no score, and a measure that fewer have does not count. */
export const FEWEST_BATCHES = 5;
/** A measure counts where at least this share of a variety's batches has it. */
const LEAST_SHARE = 0.5;

/** A measure that a variety is held against. */
export interface HeldMeasure {
  /** Place among the house's measures. */
  readonly at: number;
  readonly tolerance: Tolerance;
  readonly limits: ScaledLimits;
  readonly batches: number;
}

export interface VarietyGround {
  readonly variety: string;
  readonly grain: string | null;
  readonly batches: readonly Batch[];
  /** One row a batch, one column a measure of the house, on the measures' scales; NaN where not recorded. */
  readonly rows: readonly Float64Array[];
  readonly sums: PairSums;
  /** Those that count for the score, and those that too few batches have but enough for a chance of their own. */
  readonly counted: readonly HeldMeasure[];
  readonly beside: readonly HeldMeasure[];
  readonly notCounted: readonly { readonly measure: string; readonly reason: string }[];
}

/** What all scores of a view stand on. */
export interface ScoringGround {
  readonly measures: readonly string[];
  readonly scales: readonly MeasureScale[];
  readonly varieties: readonly VarietyGround[];
  readonly tolerancesFrom: readonly ("targets.csv" | "house.toml")[];
}

const or = (value: number | null, otherwise: number): number => value ?? otherwise;

/** The variety's batches by name. */
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
    value === null ? otherwise : or(scale.to(value), otherwise);
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
  const inside = targets.map(insideTarget);
  const groups = [...byVariety(batches)].map(([variety, own]) => {
    const grain = own.find(({ row }) => row.grain !== null)?.row.grain ?? null;
    return { variety, grain, own, ...tolerancesOf(variety, grain, inside, halfWidths) };
  });
  const measures = [...new Set(groups.flatMap(({ found }) => found.map(({ tolerance }) => tolerance.measure)))].sort();
  const scales = measures.map(scaleOf);
  const steps = measures.map((measure) =>
    stepOf(batches.map((batch) => batch.valueOf(measure)).filter((value) => value !== null)),
  );
  const read = groups.map((group) => {
    const sums = new PairSums(measures.length);
    const rows = group.own.map((batch) =>
      Float64Array.from(measures, (measure, at) => {
        const value = batch.valueOf(measure);
        return value === null ? Number.NaN : or(scales[at]?.to(value) ?? null, Number.NaN);
      }),
    );
    for (const row of rows) sums.add(row);
    return { ...group, rows, sums };
  });
  const usual = measures.map((_, at) => {
    const means = read.map(({ sums }) => sums.mean(at)).filter((value) => !Number.isNaN(value));
    return means.reduce((sum, value) => sum + value, 0) / Math.max(1, means.length);
  });

  const varieties = read.map(({ variety, grain, own, rows, sums, found, notCounted }): VarietyGround => {
    const left: { measure: string; reason: string }[] = [...notCounted];
    const held = (from: FoundTolerance): HeldMeasure | null => {
      const { tolerance } = from;
      const at = measures.indexOf(tolerance.measure);
      const scale = scales[at] as MeasureScale;
      const count = sums.count(at);
      if (count < FEWEST_BATCHES) {
        const reason = count === 0 ? "no batch has it" : `${count} of ${own.length} batches have it; a score needs 5`;
        left.push({ measure: tolerance.measure, reason });
        return null;
      }
      const leastSpread = spreadOfStep(steps[at] as number) * scale.slope(scale.from(sums.mean(at)));
      return {
        at,
        tolerance,
        limits: scaledLimits(tolerance, scale, usual[at] as number, leastSpread),
        batches: count,
      };
    };
    const all = found.map(held).filter((measure) => measure !== null);
    const most = (measure: HeldMeasure): boolean => measure.batches >= LEAST_SHARE * own.length;
    const beside = all.filter((measure) => !most(measure));
    for (const { tolerance, batches: count } of beside) {
      const reason = `${count} of ${own.length} batches have it; a score takes what at least half of them have`;
      left.push({ measure: tolerance.measure, reason });
    }
    return { variety, grain, batches: own, rows, sums, counted: all.filter(most), beside, notCounted: left };
  });
  const tolerancesFrom = new Set(groups.flatMap(({ found }) => found.map(({ from }) => from)));
  return { measures, scales, varieties, tolerancesFrom: [...tolerancesFrom].sort().reverse() };
}
