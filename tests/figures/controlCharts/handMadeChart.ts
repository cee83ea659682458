import type { RuleName } from "../../../src/analysis/controlCharts/signal.ts";
import type { ChartedRun, ChartPhase, ChartSignal, ControlChart } from "../../../src/report/controlChartResult.ts";
import { document } from "../handMade.ts";

const DAY = 86_400_000;
const FIRST = Date.UTC(2025, 0, 6, 9);
export const CENTRES: Readonly<Record<string, number>> = { Alva: 81, Brisk: 79 };

export interface Asked {
  /** Differences from the centre, one a batch, every fourth day; Alva and Brisk in turn unless `varieties` says. */
  readonly deviations: readonly number[];
  readonly varieties?: readonly string[];
  /** Of single batches, for each variety or for all. */
  readonly sigma?: number | Readonly<Record<string, number>>;
  /** Index at which a second phase begins, and its sigma. */
  readonly second?: { readonly at: number; readonly sigma: number };
  readonly baseline?: number;
  readonly leftOut?: readonly number[];
  readonly rules?: readonly RuleName[];
}

export const runName = (index: number): string => `25-${String(index + 1).padStart(3, "0")}`;
export const dayOf = (index: number): number => FIRST + index * 4 * DAY;

const exactly = (estimate: number) => ({ estimate, low: estimate, high: estimate });

/** A chart whose every number is put there by hand: limits are 3 sigma off, the running mean is a tenth of each batch. */
export function chartWith(asked: Asked, parts: Partial<ControlChart> = {}): ControlChart {
  const { deviations, varieties = ["Alva", "Brisk"], sigma = 1, second, baseline = 8, leftOut = [] } = asked;
  const sigmaOf = (index: number, variety: string): number =>
    second && index >= second.at ? second.sigma : typeof sigma === "number" ? sigma : (sigma[variety] ?? 1);
  const phaseOf = (index: number): number => (second && index >= second.at ? 1 : 0);
  const runs = deviations.map((deviation, index): ChartedRun => {
    const variety = varieties[index % varieties.length] ?? "Alva";
    const centre = CENTRES[variety] ?? 80;
    const inPhase = second && index >= second.at ? index - second.at : index;
    return {
      run: runName(index),
      variety,
      lot: null,
      kiln: null,
      load: null,
      at: dayOf(index),
      value: centre + deviation,
      samples: 1,
      phase: phaseOf(index),
      inBaseline: inPhase < baseline && !leftOut.includes(index),
      leftOut: leftOut.includes(index) ? "left out by hand" : null,
      centre,
      deviation,
      sigma: sigmaOf(index, variety),
    };
  });
  const phases = [...new Set(runs.map((run) => run.phase))].map((phase): ChartPhase => {
    const own = runs.filter((run) => run.phase === phase);
    const first = own[0]?.at ?? 0;
    return {
      name: phase === 0 ? "since the first batch" : "since the bed was laid shallower",
      from: first,
      to: own.at(-1)?.at ?? 0,
      runs: own.length,
      baselineRuns: own.filter((run) => run.inBaseline).length,
      provisional: false,
      sigma: null,
      pooled: typeof sigma === "number",
      centres: [...new Set(own.map((run) => run.variety))].map((variety) => {
        const held = own.filter((run) => run.variety === variety);
        const spread = held[0]?.sigma ?? 1;
        return {
          variety,
          centre: exactly(CENTRES[variety] ?? 80),
          sigma: exactly(spread),
          reach: 3 * spread,
          baselineRuns: held.filter((run) => run.inBaseline).length,
          frozen: true,
        };
      }),
      reach: null,
    };
  });
  const means = new Float64Array(runs.length);
  runs.forEach((run, i) => {
    const before = i > 0 && runs[i - 1]?.phase === run.phase ? (means[i - 1] ?? 0) : 0;
    means[i] = before + 0.1 * ((run.deviation ?? 0) - before);
  });
  return {
    measure: "dry_yield_pct",
    runs,
    lacking: [],
    phases,
    rules: asked.rules ?? ["beyondLimits", "weightedMean"],
    signals: [],
    falseSignals: null,
    weightedMean: { means, reach: Float64Array.from(runs, (_, i) => Math.min(0.6, 0.28 + 0.02 * i)), weight: 0.1 },
    cumulativeSums: null,
    movingRanges: null,
    within: null,
    assumptions: null,
    capability: [],
    tooLittle: null,
    ...parts,
  };
}

/** A signal over runs `from` to `to` of {@link chartWith}, raised at the last. */
export function signalOver(
  rule: RuleName,
  from: number,
  to: number,
  direction: ChartSignal["direction"],
  size: number,
  raisedAt = to,
): ChartSignal {
  return {
    rule,
    direction,
    size,
    runs: Array.from({ length: to - from + 1 }, (_, i) => runName(from + i)),
    raisedAt: runName(raisedAt),
    from: dayOf(from),
    to: dayOf(to),
    beside: [],
  };
}

export function drawn(markup: string): Element {
  const holder = document.createElement("div");
  holder.innerHTML = markup;
  const svg = holder.firstElementChild;
  if (!svg) throw new Error("no drawing");
  return svg;
}

/** From a value to its height on the drawing, read off the printed values of its axis. */
export function heightScale(svg: Element, strip = 0, strips = 1): (value: number) => number {
  const labels = [...svg.querySelectorAll(".axis text[text-anchor=end]:not(.title)")].map((text) => ({
    value: Number((text.textContent ?? "").replace("\u2212", "-")),
    y: Number(text.getAttribute("y")),
  }));
  const each = labels.length / strips;
  const own = labels.slice(strip * each, (strip + 1) * each);
  const [a, b] = [own[0], own.at(-1)];
  if (!a || !b || a.value === b.value) throw new Error("an axis with fewer than two values");
  // Text stands 0.34 of its size under the height that it names.
  const drop = Number(svg.getAttribute("font-size")) * 0.34;
  return (value) => a.y - drop + ((value - a.value) / (b.value - a.value)) * (b.y - a.y);
}

/** Start, height and end of every level stroke of a path: `M10,20H30`. */
export function levelStrokes(svg: Element, selector: string): { x1: number; y: number; x2: number }[] {
  return [...svg.querySelectorAll(selector)].flatMap((path) =>
    [...(path.getAttribute("d") ?? "").matchAll(/M([\d.-]+),([\d.-]+)H([\d.-]+)/g)].map(([, x1, y, x2]) => ({
      x1: Number(x1),
      y: Number(y),
      x2: Number(x2),
    })),
  );
}
