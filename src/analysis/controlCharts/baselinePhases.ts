import { type IndividualsLimits, individualsLimits } from "./individualsLimits.ts";
import { movingRangeSpread } from "./movingRangeSpread.ts";

/** One value in time order and the group (variety) whose centre it is judged by. */
export interface ChartPoint {
  readonly value: number;
  readonly group: string;
}

/** What one group's limits rest on within a phase. */
export interface GroupBaseline {
  readonly group: string;
  /** Indices of the points that set the centre, in time order. */
  readonly indices: readonly number[];
  /** Null where the baseline cannot give limits; then `withoutLimits` says why. */
  readonly limits: IndividualsLimits | null;
  /** `tooFew`: fewer than five usable values in all groups' baselines together; `noSpread`: they are all the same. */
  readonly withoutLimits: "tooFew" | "noSpread" | null;
  /** Fewer than twelve values behind the centre: the limits are provisional, and their interval says how uncertain. */
  readonly provisional: boolean;
  /** The spread is that within all groups, not this one's own. */
  readonly spreadPooled: boolean;
  /** The baseline is as long as asked for, or was named: later runs no longer move the limits. */
  readonly frozen: boolean;
}

/** A stretch of points judged by one set of limits. Indices are inclusive. */
export interface BaselinePhase {
  readonly from: number;
  readonly to: number;
  /** In the order in which they first appear. */
  readonly groups: readonly GroupBaseline[];
}

export interface BaselineOptions {
  /** Indices of points at which a new baseline begins; each starts a phase with that point. */
  readonly newBaselineAt?: readonly number[];
  /** Points that no baseline may use, by a logged event or by hand; they are charted and judged all the same. */
  readonly leftOut?: ReadonlySet<number>;
  /** Points that make the baseline of their group in the phases that they lie in; elsewhere the first usable ones do. */
  readonly named?: ReadonlySet<number> | null;
  /** Usable points of each group that make a baseline where none is named. */
  readonly baselineCount?: number;
  /** Limits lie this many sigma from the centre. */
  readonly multiplier?: number;
}

/** Values of its own that every group needs before groups stop sharing their spread. */
const ownSpreadFrom = 20;
/** Fewer values than this behind a centre make limits provisional. */
const provisionalBelow = 12;
/** Moving ranges from fewer values than this say next to nothing: five give an interval of sigma from 0.6 to 4 times it. */
const leastForLimits = 5;

/**
 * Phases and their limits. Within a phase each group's baseline is the named points, else its first `baselineCount`
 * usable ones; from then on its limits stand still until an event starts a new phase. No point leaves a baseline
 * because of its value.
 *
 * Each group has its own centre. The spread is pooled over the groups' moving ranges, none of which crosses from one
 * group to another or over a phase, until every group of the phase has 20 baseline values; then each has its own. A left-out point is
 * stepped over: the range is taken between its neighbours. The counts 12 and 20 are the house's; 5 is a choice of the
 * project's.
 *
 * @returns phases in time order that cover all points; empty for no points
 * @throws RangeError for a baseline count that is not a whole number of 2 or more, an index outside, or a value that is
 *   not finite
 */
export function baselinePhases(points: readonly ChartPoint[], options: BaselineOptions = {}): readonly BaselinePhase[] {
  const { newBaselineAt = [], leftOut = new Set(), named = null, baselineCount = 24, multiplier = 3 } = options;
  if (!(Number.isInteger(baselineCount) && baselineCount >= 2)) {
    throw new RangeError(`baselinePhases requires a baseline of 2 points or more; got ${baselineCount}`);
  }
  for (const at of [...newBaselineAt, ...leftOut, ...(named ?? [])]) {
    if (!(Number.isInteger(at) && at >= 0 && at < points.length)) {
      throw new RangeError(`baselinePhases requires indices of its ${points.length} points; got ${at}`);
    }
  }
  const broken = points.find(({ value }) => !Number.isFinite(value));
  if (broken) throw new RangeError(`baselinePhases requires finite values; got ${broken.value}`);
  if (points.length === 0) return [];
  const starts = [...new Set([0, ...newBaselineAt])].sort((a, b) => a - b);
  return starts.map((from, phase) => {
    const to = (starts[phase + 1] ?? points.length) - 1;
    const namedGroups = new Set(
      [...(named ?? [])].flatMap((at) => (at >= from && at <= to ? [(points[at] as ChartPoint).group] : [])),
    );
    const baselines = new Map<string, number[]>();
    for (let at = from; at <= to; at += 1) {
      const { group } = points[at] as ChartPoint;
      const indices = baselines.get(group) ?? [];
      baselines.set(group, indices);
      if (leftOut.has(at)) continue;
      if (namedGroups.has(group) ? named?.has(at) : indices.length < baselineCount) indices.push(at);
    }
    return { from, to, groups: groupBaselines(points, baselines, { namedGroups, baselineCount, multiplier }) };
  });
}

function groupBaselines(
  points: readonly ChartPoint[],
  baselines: ReadonlyMap<string, readonly number[]>,
  how: { readonly namedGroups: ReadonlySet<string>; readonly baselineCount: number; readonly multiplier: number },
): GroupBaseline[] {
  const series = new Map(
    Array.from(baselines, ([group, indices]) => [group, indices.map((at) => (points[at] as ChartPoint).value)]),
  );
  const all = [...series.values()];
  const spreadPooled = all.length > 1 && all.some(({ length }) => length < ownSpreadFrom);
  const pooledSpread = movingRangeSpread(all);
  return Array.from(baselines, ([group, indices]) => {
    const values = series.get(group) ?? [];
    const spread = spreadPooled ? pooledSpread : movingRangeSpread([values]);
    const enough = values.length > 0 && spread !== null && spread.ranges >= leastForLimits - 1;
    const limits = enough ? individualsLimits(values, { multiplier: how.multiplier, spread }) : null;
    return {
      group,
      indices,
      limits,
      withoutLimits: limits !== null ? null : enough ? "noSpread" : "tooFew",
      provisional: values.length < provisionalBelow,
      spreadPooled,
      frozen: how.namedGroups.has(group) || values.length >= how.baselineCount,
    };
  });
}
