import type { ChartedRun, ChartSignal } from "../../report/controlChartResult.ts";
import { isUpwards } from "./signalWords.ts";

/** Signals of several rules that speak of the same batches on the same side: one place on a drawing, said once. */
export interface SignalsTogether {
  /** Indices of the chart's runs, inclusive. */
  readonly from: number;
  readonly to: number;
  readonly upwards: boolean;
  /** The one that carries the words first: see {@link inOrderOfWords}. */
  readonly signals: readonly ChartSignal[];
}

/** Places of runs in their chart, for signals that name runs. */
export const placesOf = (runs: readonly ChartedRun[]): ReadonlyMap<string, number> =>
  new Map(runs.map(({ run }, index) => [run, index]));

/** A signal whose runs are not on the chart is passed over. In order of time. */
export function signalGroups(runs: readonly ChartedRun[], signals: readonly ChartSignal[]): readonly SignalsTogether[] {
  const places = placesOf(runs);
  const spans = signals.flatMap((signal) => {
    const held = signal.runs.flatMap((run) => places.get(run) ?? []);
    return held.length === 0 ? [] : [{ signal, from: Math.min(...held), to: Math.max(...held) }];
  });
  const groups: { from: number; to: number; upwards: boolean; signals: ChartSignal[] }[] = [];
  for (const { signal, from, to } of spans.sort((a, b) => a.from - b.from || b.to - a.to)) {
    const upwards = isUpwards(signal);
    const group = groups.find((other) => other.upwards === upwards && from <= other.to);
    if (group) {
      group.to = Math.max(group.to, to);
      group.signals.push(signal);
    } else groups.push({ from, to, upwards, signals: [signal] });
  }
  return groups.map((group) => ({ ...group, signals: inOrderOfWords(group.signals) }));
}

/** What a signal adds up to over its batches. */
const weightOf = ({ runs, size }: ChartSignal): number => runs.length * Math.abs(size);

/**
 * The longest stretch first, unless batches beyond the limits make more than half of what it adds up to: then it is they
 * that pull it, and they are named before it.
 */
export function inOrderOfWords(signals: readonly ChartSignal[]): readonly ChartSignal[] {
  const ordered = [...signals].sort((a, b) => b.runs.length - a.runs.length);
  const [longest] = ordered;
  const beyond = ordered.find(({ rule }) => rule === "beyondLimits");
  if (!longest || !beyond || weightOf(beyond) <= weightOf(longest) / 2) return ordered;
  return [beyond, ...ordered.filter((signal) => signal !== beyond)];
}
