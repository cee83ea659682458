import { type BaselineOptions, type BaselinePhase, baselinePhases, type ChartPoint } from "./baselinePhases.ts";
import type { ChartSeries } from "./chartSeries.ts";
import { type Cusum, cusum } from "./cusum.ts";
import { type Ewma, ewma } from "./ewma.ts";
import { type FirstOrderResiduals, firstOrderResiduals, neighboursAreRelated } from "./firstOrderResiduals.ts";
import { movingRangeSpread } from "./movingRangeSpread.ts";
import type { RuleChoice } from "./ruleChoice.ts";
import { runRuleSignals } from "./runRules.ts";
import { type Signal, signalSize } from "./signal.ts";

/** A phase of a chart with all that was judged in it. Arrays run over `judged`, the indices of points with limits. */
export interface ChartPhase extends BaselinePhase {
  readonly judged: readonly number[];
  /** Distance of each judged value from its group's centre, in the measure's unit. */
  readonly deviations: Float64Array;
  /** What the rules ran on: the deviations with their groups' sigmas, or residuals with theirs. */
  readonly series: ChartSeries;
  /** Lag-1 autocorrelation of the baseline's deviations acted on; null where the chart runs on the values themselves. */
  readonly residualsOf: FirstOrderResiduals | null;
  readonly ewma: Ewma;
  readonly cusum: Cusum;
}

export interface ControlChart {
  readonly phases: readonly ChartPhase[];
  /** Signals of the chosen rules; their indices are those of the points given. In order of when they were raised. */
  readonly signals: readonly Signal[];
}

/**
 * The whole of a chart of single values: phases and limits, deviations from each group's own centre, residuals where
 * the lag-1 interval of a baseline excludes 0, the running weighted mean, the cumulative sums, and the signals of the
 * chosen rules. Both running sums start anew with each phase; they are computed whether chosen or not.
 *
 * Runs of points that have no limits are stepped over. Where the chart runs on residuals, those have one sigma for all
 * groups, from the moving ranges of the baseline's residuals in time order, and a signal's size is still that of the
 * values it covers.
 *
 * @throws RangeError as `baselinePhases` does
 */
export function controlChart(
  points: readonly ChartPoint[],
  choice: RuleChoice,
  options: Omit<BaselineOptions, "multiplier"> = {},
): ControlChart {
  const signals: Signal[] = [];
  const phases = baselinePhases(points, { ...options, multiplier: choice.multiplier }).map((phase) => {
    const charted = chartPhase(points, phase, choice);
    signals.push(...signalsOf(charted, choice));
    return charted;
  });
  return { phases, signals: signals.sort((a, b) => a.raisedAt - b.raisedAt) };
}

function chartPhase(points: readonly ChartPoint[], phase: BaselinePhase, choice: RuleChoice): ChartPhase {
  const groups = new Map(phase.groups.map((baseline) => [baseline.group, baseline.limits]));
  const baseline = new Set(phase.groups.flatMap(({ indices }) => indices));
  const judged: number[] = [];
  const deviations: number[] = [];
  const sigmas: number[] = [];
  const fromBaseline: number[] = [];
  for (let at = phase.from; at <= phase.to; at += 1) {
    const { value, group } = points[at] as ChartPoint;
    const limits = groups.get(group);
    if (!limits) continue;
    if (baseline.has(at)) fromBaseline.push(judged.length);
    judged.push(at);
    deviations.push(value - limits.centre.estimate);
    sigmas.push(limits.sigma.estimate);
  }
  const values: ChartSeries = { deviations, sigmas };
  const { series, residualsOf } = whitened(values, fromBaseline);
  return {
    ...phase,
    judged,
    deviations: Float64Array.from(deviations),
    series,
    residualsOf,
    ewma: ewma(series, { weight: choice.weight, limit: choice.weightedLimit }),
    cusum: cusum(series, { reference: choice.reference, decision: choice.decision }),
  };
}

function whitened(
  values: ChartSeries,
  baseline: readonly number[],
): { readonly series: ChartSeries; readonly residualsOf: FirstOrderResiduals | null } {
  const related = neighboursAreRelated(baseline.map((at) => values.deviations[at] as number));
  if (!related) return { series: values, residualsOf: null };
  const residualsOf = firstOrderResiduals(values.deviations, baseline);
  const spread = movingRangeSpread([baseline.map((at) => residualsOf.residuals[at] as number)]);
  if (spread === null || spread.sigma === 0) return { series: values, residualsOf: null };
  const sigmas = new Float64Array(values.deviations.length).fill(spread.sigma);
  return { series: { deviations: residualsOf.residuals, sigmas }, residualsOf };
}

function signalsOf(phase: ChartPhase, choice: RuleChoice): Signal[] {
  const found = choice.rules.flatMap((rule): readonly Signal[] => {
    if (rule === "weightedMean") return phase.ewma.signals;
    if (rule === "cumulativeSum") return phase.cusum.signals;
    return runRuleSignals(phase.series, rule, choice.multiplier);
  });
  return found.map((signal) => ({
    ...signal,
    from: phase.judged[signal.from] as number,
    to: phase.judged[signal.to] as number,
    raisedAt: phase.judged[signal.raisedAt] as number,
    size: signalSize(phase.deviations, signal),
  }));
}
