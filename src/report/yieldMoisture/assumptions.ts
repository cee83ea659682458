import type { ChartPhase } from "../../analysis/controlCharts/controlChart.ts";
import { lagOneAutocorrelation } from "../../analysis/lagOneAutocorrelation.ts";
import { normalProbabilityPlot } from "../../analysis/normalProbabilityPlot.ts";
import { readingStep, readingsAreCoarse } from "../../analysis/readingStep.ts";
import { skewnessTest } from "../../analysis/skewness.ts";
import type { ControlChart } from "../controlChartResult.ts";
import type { MeasuredRun } from "./measuredRuns.ts";

/** Below this nothing can be said of how values follow each other. */
const FEWEST_VALUES = 5;

/**
 * What a chart supposes, tested on the baseline of the latest phase with limits: that neighbours are unrelated, that
 * values are about normal, and that the meter is finer than the spread it should show.
 */
export function assumptionsOf(
  measured: readonly MeasuredRun[],
  phases: readonly ChartPhase[],
): ControlChart["assumptions"] {
  const latest = phases.filter((phase) => phase.judged.length > 0).at(-1);
  if (latest === undefined) return null;
  const baseline = new Set(latest.groups.flatMap(({ indices }) => indices));
  const places = latest.judged.flatMap((index, place) => (baseline.has(index) ? [place] : []));
  if (places.length < FEWEST_VALUES) return null;
  const deviations = places.map((place) => latest.deviations[place] ?? Number.NaN);
  const standardised = places.map(
    (place) => (latest.series.deviations[place] ?? Number.NaN) / (latest.series.sigmas[place] ?? Number.NaN),
  );
  const { values, quantiles } = normalProbabilityPlot(standardised);
  const own = [...baseline].map((index) => measured[index]?.value ?? Number.NaN);
  const { distinctValues, step } = readingStep(own);
  const sigma = latest.groups.find(({ limits }) => limits !== null)?.limits?.sigma.estimate ?? 0;
  return {
    lagOne: lagOneAutocorrelation(deviations),
    onResiduals: latest.residualsOf !== null,
    skewness: skewnessTest(deviations),
    normalPlot: Array.from(values, (seen, i) => ({ expected: quantiles[i] ?? Number.NaN, seen })),
    coarseStep: readingsAreCoarse(own, sigma) ? (step ?? 0) : null,
    distinctValues,
  };
}
