import type { ChartedRun, ControlChart } from "../../report/controlChartResult.ts";

/** One batch on one chart, with everything that the chart's figures draw of it. */
export interface ChartedNumbers {
  readonly charted: ChartedRun;
  /** Running mean of what lies off the centre, points; null where there are no limits. */
  readonly runningMean: number | null;
  /** Cumulative sums above and below the centre, in spreads. */
  readonly sumAbove: number | null;
  readonly sumBelow: number | null;
  /** Step from the batch of the same variety before it, points. */
  readonly step: number | null;
  /** Standard deviation of its samples, points; null below two of them. */
  readonly within: number | null;
}

/** One batch on both charts. */
export interface ChartedBatch {
  readonly run: string;
  readonly at: number;
  readonly variety: string;
  readonly dryYield: ChartedNumbers | null;
  readonly moisture: ChartedNumbers | null;
}

const finite = (value: number | undefined): number | null =>
  value === undefined || !Number.isFinite(value) ? null : value;

function numbersOf(chart: ControlChart): readonly ChartedNumbers[] {
  const { weightedMean, cumulativeSums, movingRanges, within } = chart;
  return chart.runs.map((charted, i) => ({
    charted,
    runningMean: finite(weightedMean?.means[i]),
    sumAbove: finite(cumulativeSums?.upper[i]),
    sumBelow: finite(cumulativeSums?.lower[i]),
    step: movingRanges?.ranges[i] ?? null,
    within: within?.points[i]?.standardDeviation ?? null,
  }));
}

/** Batches of both charts, latest first. */
export function chartedBatches(charts: readonly ControlChart[]): readonly ChartedBatch[] {
  const byRun = new Map<string, ChartedBatch>();
  for (const chart of charts) {
    const measure = chart.measure === "dry_yield_pct" ? "dryYield" : "moisture";
    for (const numbers of numbersOf(chart)) {
      const { run, at, variety } = numbers.charted;
      const held = byRun.get(run) ?? { run, at, variety, dryYield: null, moisture: null };
      byRun.set(run, { ...held, [measure]: numbers });
    }
  }
  return [...byRun.values()].sort((a, b) => b.at - a.at || (a.run < b.run ? 1 : -1));
}
