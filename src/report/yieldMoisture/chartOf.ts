import { controlChart, type ChartPhase as JudgedPhase } from "../../analysis/controlCharts/controlChart.ts";
import { movingRangeChart } from "../../analysis/controlCharts/movingRangeChart.ts";
import { movingRangeSpread } from "../../analysis/controlCharts/movingRangeSpread.ts";
import type { RuleChoice } from "../../analysis/controlCharts/ruleChoice.ts";
import type { ChartedMeasure, ChartedRun, ChartPhase, ChartSignal, ControlChart } from "../controlChartResult.ts";
import type { EventRow } from "../eventRow.ts";
import { assumptionsOf } from "./assumptions.ts";
import type { BaselineChoice } from "./baselineChoice.ts";
import { besideSignal } from "./besideSignal.ts";
import type { MeasuredRun, MeasuredRuns } from "./measuredRuns.ts";
import { withinOf } from "./within.ts";

export interface ChartRequest {
  readonly measure: ChartedMeasure;
  readonly runs: MeasuredRuns;
  readonly choice: RuleChoice;
  readonly baseline: BaselineChoice;
  readonly events: readonly EventRow[];
}

/** Usable runs of each variety that make a baseline where settings name none. */
export const BASELINE_RUNS = 24;

const WORDS: Readonly<Record<ChartedMeasure, string>> = {
  dry_yield_pct: "dry-matter yield",
  final_moisture_pct: "final moisture",
};

/** One control chart of one measure over the runs shown. */
export function chartOf({ measure, runs, choice, baseline, events }: ChartRequest): Omit<ControlChart, "capability"> {
  const { measured, lacking } = runs;
  const points = measured.map(({ value, variety }) => ({ value, group: variety }));
  const judged = controlChart(points, choice, {
    newBaselineAt: baseline.phases.map(({ from }) => from),
    leftOut: new Set(baseline.leftOut.keys()),
    named: baseline.named,
    baselineCount: BASELINE_RUNS,
  });
  const anyLimits = judged.phases.some((phase) => phase.judged.length > 0);
  const charted = chartedRuns(measured, judged.phases, baseline);
  const signals = judged.signals.map((signal): ChartSignal => {
    const part = measured.slice(signal.from, signal.to + 1);
    return {
      rule: signal.rule,
      direction: signal.direction,
      size: signal.size,
      runs: part.map(({ run }) => run),
      raisedAt: measured[signal.raisedAt]?.run ?? "",
      from: measured[signal.from]?.at ?? Number.NaN,
      to: measured[signal.to]?.at ?? Number.NaN,
      beside: besideSignal(measured, signal.from, signal.to, events),
    };
  });
  return {
    measure,
    runs: charted,
    lacking,
    phases: judged.phases.map((phase, index) => describePhase(phase, index, measured, baseline)),
    rules: choice.rules,
    signals,
    falseSignals: anyLimits ? "to come" : null,
    weightedMean: anyLimits ? runningMean(judged.phases, measured.length, choice.weight) : null,
    cumulativeSums: anyLimits ? runningSums(judged.phases, measured.length, choice.decision) : null,
    movingRanges: movingRanges(points, judged.phases),
    within: measure === "final_moisture_pct" ? withinOf(measured, judged.phases) : null,
    assumptions: anyLimits ? assumptionsOf(measured, judged.phases) : null,
    tooLittle: anyLimits ? null : tooLittle(measured.length, WORDS[measure]),
  };
}

function tooLittle(count: number, measure: string): string {
  if (count === 0) return `No batch shown has a ${measure}; a chart of it needs five of one variety.`;
  const batches = count === 1 ? "One batch has" : `${count} batches have`;
  return `${batches} a ${measure}; limits need at least five that are not all the same.`;
}

function chartedRuns(
  measured: readonly MeasuredRun[],
  phases: readonly JudgedPhase[],
  baseline: BaselineChoice,
): readonly ChartedRun[] {
  const deviations = overAll(phases, measured.length, ({ series }) => series.deviations);
  const sigmas = overAll(phases, measured.length, ({ series }) => series.sigmas);
  const judged = marked(
    measured.length,
    phases.map((phase) => phase.judged),
  );
  const inBaseline = marked(
    measured.length,
    phases.flatMap(({ groups }) => groups.map(({ indices }) => indices)),
  );
  const centres = phases.map(
    ({ groups }) => new Map(groups.map(({ group, limits }) => [group, limits?.centre.estimate ?? null])),
  );
  // Phases follow each other in time and cover all runs.
  let phase = 0;
  return measured.map(({ run, lot, kiln, load, at, variety, value, samples }, index) => {
    while (index > (phases[phase]?.to ?? index)) phase += 1;
    return {
      run,
      variety,
      lot,
      kiln,
      load,
      at,
      value,
      samples: samples.length,
      phase,
      inBaseline: inBaseline[index] === 1,
      leftOut: baseline.leftOut.get(index) ?? null,
      centre: centres[phase]?.get(variety) ?? null,
      deviation: judged[index] === 1 ? (deviations[index] ?? null) : null,
      sigma: judged[index] === 1 ? (sigmas[index] ?? null) : null,
    };
  });
}

function describePhase(
  phase: JudgedPhase,
  index: number,
  measured: readonly MeasuredRun[],
  baseline: BaselineChoice,
): ChartPhase {
  const began = index === 0 ? null : baseline.phases.find(({ from }) => from === phase.from);
  const withLimits = phase.groups.flatMap((group) =>
    group.limits === null ? [] : [{ ...group, limits: group.limits }],
  );
  const shared = withLimits.every(({ spreadPooled }) => spreadPooled) || withLimits.length === 1;
  const sigma = shared ? (withLimits[0]?.limits.sigma ?? null) : null;
  const multiplier = withLimits[0]?.limits.multiplier ?? Number.NaN;
  return {
    name: began ? `since ${began.event.what}` : "since the first batch",
    from: measured[phase.from]?.at ?? Number.NaN,
    to: measured[phase.to]?.at ?? Number.NaN,
    runs: phase.to - phase.from + 1,
    baselineRuns: phase.groups.reduce((sum, group) => sum + group.indices.length, 0),
    provisional: withLimits.some(({ provisional }) => provisional),
    sigma,
    pooled: withLimits.some(({ spreadPooled }) => spreadPooled),
    centres: withLimits.map(({ group, limits, indices, frozen }) => ({
      variety: group,
      centre: limits.centre,
      sigma: limits.sigma,
      reach: limits.multiplier * limits.sigma.estimate,
      baselineRuns: indices.length,
      frozen,
    })),
    reach:
      sigma === null
        ? null
        : { estimate: multiplier * sigma.estimate, low: multiplier * sigma.low, high: multiplier * sigma.high },
  };
}

/** 1 at each of these places, 0 elsewhere: asked of thousands of runs at every redraw, where a set is slow. */
function marked(count: number, places: readonly (readonly number[])[]): Uint8Array {
  const marks = new Uint8Array(count);
  for (const list of places) for (const place of list) marks[place] = 1;
  return marks;
}

/** Spreads what each phase holds of its judged runs over all runs; runs without limits stay NaN. */
function overAll(
  phases: readonly JudgedPhase[],
  count: number,
  part: (phase: JudgedPhase) => ArrayLike<number>,
): Float64Array {
  const all = new Float64Array(count).fill(Number.NaN);
  for (const phase of phases) {
    const values = part(phase);
    phase.judged.forEach((index, i) => {
      all[index] = values[i] ?? Number.NaN;
    });
  }
  return all;
}

function runningMean(phases: readonly JudgedPhase[], count: number, weight: number): ControlChart["weightedMean"] {
  return {
    means: overAll(phases, count, (phase) => phase.ewma.means),
    reach: overAll(phases, count, (phase) => phase.ewma.reach),
    weight,
  };
}

function runningSums(phases: readonly JudgedPhase[], count: number, decision: number): ControlChart["cumulativeSums"] {
  return {
    upper: overAll(phases, count, (phase) => phase.cusum.upper),
    lower: overAll(phases, count, (phase) => phase.cusum.lower),
    decision,
  };
}

/** Moving ranges are judged by the latest phase's spread, which is the one that speaks of tonight. */
function movingRanges(
  points: readonly { readonly value: number; readonly group: string }[],
  phases: readonly JudgedPhase[],
): ControlChart["movingRanges"] {
  const latest = phases.filter((phase) => phase.judged.length > 0).at(-1);
  if (latest === undefined) return null;
  const spread = movingRangeSpread(
    latest.groups.map(({ indices }) => indices.map((index) => points[index]?.value ?? Number.NaN)),
  );
  if (spread === null) return null;
  return movingRangeChart(
    points.map(({ value }) => value),
    points.map(({ group }) => group),
    spread,
  );
}
