import type { RenderFunction } from "@observablehq/plot";
import type { ChartedRun, ChartSignal } from "../../report/controlChartResult.ts";
import type { Frame } from "../figureSpec.ts";
import type { Label } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { MOST_LINKED_MARKS, ringRadius } from "../scatter.ts";
import type { ChartFrame } from "./chartFrame.ts";
import type { ChartWords } from "./chartWords.ts";
import { placesOf, type SignalsTogether, signalGroups } from "./signalGroups.ts";
import { signalLabel, signalName, signalSize } from "./signalWords.ts";

interface At {
  readonly x: number;
  readonly y: number;
}

/** How the signals of a chart are drawn, in the chart's own units. */
export interface SignalMarks {
  /** A batch beyond its limits, or the batch at which another rule first spoke. */
  readonly rings: readonly At[];
  /** Where a stretch of batches stands: a line at their mean, or from the first to the last of a trend. */
  readonly levels: readonly (readonly [At, At])[];
  readonly labels: readonly Label[];
}

/** Words at more signals than this hide the batches; the latest are named, all are ringed and in the table. */
const mostNamed = (frame: Frame, batches: number): number =>
  (frame.narrow ? 3 : 6) - (batches > MOST_LINKED_MARKS ? 1 : 0);
/** Batches beyond the same limit closer than this, px, are named together. */
const together = (frame: Frame): number => (frame.narrow ? 70 : 110);

/** One label: signals together, or several batches beyond the same limit that stand close. */
interface Named {
  readonly groups: readonly SignalsTogether[];
  readonly onlyBeyond: boolean;
}

const beyondOnly = (group: SignalsTogether): boolean => group.signals.every(({ rule }) => rule === "beyondLimits");

function namedTogether(groups: readonly SignalsTogether[], across: (place: number) => number, frame: Frame): Named[] {
  const named: { groups: SignalsTogether[]; onlyBeyond: boolean }[] = [];
  for (const group of groups) {
    const onlyBeyond = beyondOnly(group);
    const near = named.find((other) => {
      const last = other.groups.at(-1);
      return (
        onlyBeyond &&
        other.onlyBeyond &&
        last !== undefined &&
        last.upwards === group.upwards &&
        across(group.from) - across(last.to) < together(frame)
      );
    });
    if (near) near.groups.push(group);
    else named.push({ groups: [group], onlyBeyond });
  }
  return named;
}

/** The words of a label: what stands out most, and where there is room what else was seen there. */
function textsOf({ groups, onlyBeyond }: Named, words: ChartWords, { narrow }: Frame): readonly string[] {
  const signals = groups.flatMap((group) => group.signals);
  const [lead] = signals;
  if (!lead) return [];
  if (onlyBeyond) {
    const batches = signals.reduce((sum, signal) => sum + signal.runs.length, 0);
    return [batches === 1 ? signalLabel(lead, words) : `${batches} ${signalName(lead)}`];
  }
  if (narrow) return lead.runs.length === 1 ? [signalLabel(lead, words)] : [signalName(lead), signalSize(lead, words)];
  const also = [...new Set(signals.slice(1).map(signalName))].filter((name) => name !== signalName(lead));
  return [signalLabel(lead, words), ...also.slice(0, 1).map((name) => `and ${name}`)];
}

/**
 * @param heightOf where a batch stands on the drawing; null where it is not drawn
 */
export function signalMarks(
  runs: readonly ChartedRun[],
  signals: readonly ChartSignal[],
  words: ChartWords,
  { frame, chart, heightOf }: { frame: Frame; chart: ChartFrame; heightOf: (run: ChartedRun) => number | null },
): SignalMarks {
  const places = placesOf(runs);
  const atOf = (run: string): At | null => {
    const held = runs[places.get(run) ?? -1];
    const y = held ? heightOf(held) : null;
    return held && y !== null ? { x: held.at, y } : null;
  };
  const pointsOf = (signal: ChartSignal): readonly At[] => signal.runs.flatMap((run) => atOf(run) ?? []);
  const ringsOf = (signal: ChartSignal): readonly At[] =>
    signal.rule === "beyondLimits" ? pointsOf(signal) : [atOf(signal.raisedAt) ?? []].flat();
  const levelOf = (signal: ChartSignal): readonly [At, At] | null => {
    const points = pointsOf(signal);
    const [first, last] = [points[0], points.at(-1)];
    if (signal.rule === "beyondLimits" || !first || !last || points.length < 2) return null;
    if (signal.rule === "sixRisingOrFalling") return [first, last];
    const y = points.reduce((sum, point) => sum + point.y, 0) / points.length;
    return [
      { x: first.x, y },
      { x: last.x, y },
    ];
  };

  const groups = signalGroups(runs, signals);
  const levels = new Map(
    groups.flatMap((group) => {
      const lead = group.signals.find(({ rule }) => rule !== "beyondLimits");
      const level = lead ? levelOf(lead) : null;
      return level ? [[group, level] as const] : [];
    }),
  );
  const seen = new Set<string>();
  const rings = signals.flatMap(ringsOf).filter(({ x, y }) => {
    const key = `${x} ${y}`;
    return seen.has(key) ? false : seen.add(key) !== undefined;
  });
  const across = (place: number): number => chart.acrossAt(runs[place]?.at ?? 0);
  const labels = namedTogether(groups, across, frame)
    .slice(-mostNamed(frame, runs.length))
    .flatMap((named, priority): Label[] => {
      const up = named.groups[0]?.upwards ?? true;
      const held = named.groups.flatMap((group) => group.signals.flatMap(ringsOf));
      const furthest = [...held].sort((a, b) => (up ? b.y - a.y : a.y - b.y));
      const level = named.groups.flatMap((group) => levels.get(group) ?? []);
      const middle =
        level[0] && level[1] ? [{ x: (level[0].x + level[1].x) / 2, y: (level[0].y + level[1].y) / 2 }] : [];
      const atRings = named.groups[0]?.signals[0]?.rule === "beyondLimits";
      const [anchor, ...or] = atRings ? furthest : [...middle, ...level, ...furthest.slice(0, 2)];
      if (!anchor) return [];
      return [
        {
          ...anchor,
          or: or.slice(0, 4),
          reach: atRings ? ringRadius(frame) : 0,
          prefer: up ? 270 : 90,
          priority,
          farthest: runs.length > MOST_LINKED_MARKS ? 80 : 140,
          role: "signal-words",
          lines: textsOf(named, words, frame).map((text, row) => ({ text, strong: row === 0 })),
        },
      ];
    });
  return { rings, levels: [...levels.values()], labels };
}

/** The mean of each stretch that signals, as a line over it. */
export function levelMarks(levels: SignalMarks["levels"]): RenderFunction {
  return layer("signal level", ({ x, y, pen }) =>
    levels.map(([from, to]) => pen.element("path", { d: `M${x(from.x)},${y(from.y)}L${x(to.x)},${y(to.y)}` })),
  );
}
