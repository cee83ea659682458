/** What a chart can signal on. The page says each in words; there are no rule numbers. */
export type RuleName =
  | "beyondLimits"
  | "weightedMean"
  | "cumulativeSum"
  | "eightOnOneSide"
  | "twoOfThreeBeyondTwoThirds"
  | "fourOfFiveBeyondOneThird"
  | "sixRisingOrFalling";

export type Direction = "above" | "below" | "rising" | "falling";

/** One thing that a chart signals: neighbouring firings of one rule on one side, joined. Indices are inclusive. */
export interface Signal {
  readonly rule: RuleName;
  readonly from: number;
  readonly to: number;
  /** The run at which the rule first fired, so that one knows when it could have been known. */
  readonly raisedAt: number;
  /** Signed, in the measure's unit: mean distance from the centre over the runs, or last less first where rising or falling. */
  readonly size: number;
  readonly direction: Direction;
}

/** One firing of a rule: the run at which it fires, the first run that belongs to it, and the side. */
export interface Firing {
  readonly from: number;
  readonly at: number;
  readonly direction: Direction;
}

/**
 * Joins firings, in order, whose runs touch or overlap and whose direction is the same, into one signal each.
 *
 * @param deviations distances from the centre, in the measure's unit, in time order
 */
export function joinFirings(rule: RuleName, firings: readonly Firing[], deviations: ArrayLike<number>): Signal[] {
  const open = new Map<Direction, { from: number; to: number; raisedAt: number }>();
  const joined: { from: number; to: number; raisedAt: number; direction: Direction }[] = [];
  for (const { from, at, direction } of firings) {
    const current = open.get(direction);
    if (current && from <= current.to + 1) {
      current.from = Math.min(current.from, from);
      current.to = at;
      continue;
    }
    const next = { from, to: at, raisedAt: at, direction };
    open.set(direction, next);
    joined.push(next);
  }
  return joined.map((signal) => ({ rule, ...signal, size: signalSize(deviations, signal) }));
}

/** Mean deviation over the runs of a level signal; last less first for a trend. */
export function signalSize(
  deviations: ArrayLike<number>,
  { from, to, direction }: { readonly from: number; readonly to: number; readonly direction: Direction },
): number {
  if (direction === "rising" || direction === "falling") {
    return (deviations[to] as number) - (deviations[from] as number);
  }
  let sum = 0;
  for (let at = from; at <= to; at += 1) sum += deviations[at] as number;
  return sum / (to - from + 1);
}

/** Signals of several rules that speak of the same runs on the same side. */
export interface SignalGroup {
  readonly from: number;
  readonly to: number;
  /** First run at which any of them fired. */
  readonly raisedAt: number;
  readonly upwards: boolean;
  /** In order of when they fired. */
  readonly signals: readonly Signal[];
}

/**
 * Gathers signals that overlap and point the same way, so that a page can say one thing once: "slower since run 31,
 * seen by the limits and by the weighted mean". Rising counts as above, falling as below.
 */
export function groupSignals(signals: readonly Signal[]): readonly SignalGroup[] {
  const groups: { from: number; to: number; raisedAt: number; upwards: boolean; signals: Signal[] }[] = [];
  for (const signal of [...signals].sort((a, b) => a.from - b.from || a.to - b.to)) {
    const upwards = signal.direction === "above" || signal.direction === "rising";
    const group = groups.find((other) => other.upwards === upwards && signal.from <= other.to);
    if (group) {
      group.to = Math.max(group.to, signal.to);
      group.raisedAt = Math.min(group.raisedAt, signal.raisedAt);
      group.signals.push(signal);
    } else {
      groups.push({ from: signal.from, to: signal.to, raisedAt: signal.raisedAt, upwards, signals: [signal] });
    }
  }
  for (const group of groups) group.signals.sort((a, b) => a.raisedAt - b.raisedAt);
  return groups;
}
