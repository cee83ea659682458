import type { ChartPhase } from "../../analysis/controlCharts/controlChart.ts";
import { meansAsIndividuals } from "../../analysis/controlCharts/meansAsIndividuals.ts";
import { sChart } from "../../analysis/controlCharts/sChart.ts";
import type { ControlChart } from "../controlChartResult.ts";
import type { MeasuredRun } from "./measuredRuns.ts";

/** Fewer batches with two samples or more say nothing of how even a bed usually is. */
const FEWEST_BATCHES = 5;

/** The spread within each batch, judged by the baselines' batches; null where too few were sampled twice. */
export function withinOf(measured: readonly MeasuredRun[], phases: readonly ChartPhase[]): ControlChart["within"] {
  const samples = measured.map((run) => run.samples);
  const baseline = phases.flatMap(({ groups }) => groups.flatMap(({ indices }) => indices)).sort((a, b) => a - b);
  const sampled = baseline.filter((index) => (samples[index]?.length ?? 0) > 1);
  if (sampled.length < FEWEST_BATCHES) return null;
  const chart = sChart(samples, { baseline: sampled });
  if (chart === null) return null;
  const uneven = chart.points.flatMap(({ standardDeviation, high }, index) =>
    standardDeviation !== null && high !== null && standardDeviation > high ? [measured[index]?.run ?? ""] : [],
  );
  return {
    sigma: chart.sigma,
    baselineRuns: chart.baselineBatches,
    points: chart.points,
    unevenRuns: uneven,
    narrowerBy: meansAsIndividuals(samples).narrowerBy,
  };
}
