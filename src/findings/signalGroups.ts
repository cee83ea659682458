import type { ChartedRun, ChartSignal, ControlChart } from "../report/controlChartResult.ts";

/** Signals that speak of the same runs on the same side, so that a page says one thing once. */
export interface SignalGroup {
  /** Indices into the chart's runs, inclusive. */
  readonly from: number;
  readonly to: number;
  /** The run at which the first of them was raised. */
  readonly raisedAt: number;
  readonly runs: readonly ChartedRun[];
  /** In the order in which they were raised. */
  readonly signals: readonly ChartSignal[];
  /** The signal that covers most runs on one level; a trend only where there is none. Its size is the group's. */
  readonly main: ChartSignal;
  /** What was logged about those days, each thing once. */
  readonly beside: readonly string[];
}

const pointsUp = ({ direction }: ChartSignal): boolean => direction === "above" || direction === "rising";
export const isTrend = ({ direction }: ChartSignal): boolean => direction === "rising" || direction === "falling";

function mainOf(signals: readonly ChartSignal[]): ChartSignal {
  const [first, ...others] = [...signals].sort(
    (a, b) => Number(isTrend(a)) - Number(isTrend(b)) || b.runs.length - a.runs.length,
  );
  if (first === undefined) throw new RangeError(`mainOf requires one signal or more; got ${others.length}`);
  return first;
}

function groupsOf(chart: ControlChart): readonly SignalGroup[] {
  const indexOf = new Map(chart.runs.map(({ run }, index) => [run, index]));
  const placed = chart.signals
    .map((signal) => {
      const covered = signal.runs.map((run) => indexOf.get(run)).filter((index) => index !== undefined);
      return { signal, from: Math.min(...covered), to: Math.max(...covered), at: indexOf.get(signal.raisedAt) ?? 0 };
    })
    .filter(({ from }) => Number.isFinite(from))
    .sort((a, b) => a.from - b.from || a.to - b.to);
  const groups: { from: number; to: number; members: typeof placed }[] = [];
  for (const member of placed) {
    const group = groups.find(
      ({ to, members }) =>
        member.from <= to && members.some(({ signal }) => pointsUp(signal) === pointsUp(member.signal)),
    );
    if (group === undefined) groups.push({ from: member.from, to: member.to, members: [member] });
    else {
      group.to = Math.max(group.to, member.to);
      group.members.push(member);
    }
  }
  return groups.map(({ from, to, members }) => {
    const signals = [...members].sort((a, b) => a.at - b.at).map(({ signal }) => signal);
    return {
      from,
      to,
      raisedAt: Math.min(...members.map(({ at }) => at)),
      runs: chart.runs.slice(from, to + 1),
      signals,
      main: mainOf(signals),
      beside: [...new Set(signals.flatMap(({ beside }) => beside))],
    };
  });
}

/**
 * A chart's signals, gathered where they overlap and point the same way, by the first run they cover. Answer, list and count
 * of a page ask it of one chart.
 */
export function signalGroups(chart: ControlChart): readonly SignalGroup[] {
  const known = grouped.get(chart) ?? groupsOf(chart);
  grouped.set(chart, known);
  return known;
}

const grouped = new WeakMap<ControlChart, readonly SignalGroup[]>();

/** A shift counts as still there while one of the latest batches belongs to it. */
const LATEST = 3;

/** The group that the latest batches belong to; null where they belong to none. */
export function signalNow(chart: ControlChart, groups: readonly SignalGroup[]): SignalGroup | null {
  const standing = groups.filter(({ to }) => to >= chart.runs.length - LATEST);
  return standing.sort((a, b) => b.runs.length - a.runs.length || b.to - a.to)[0] ?? null;
}
