import type { ChartPhase } from "../../analysis/controlCharts/controlChart.ts";
import { falseSignalRunLength } from "../../analysis/controlCharts/falseSignalRunLength.ts";
import type { RuleChoice } from "../../analysis/controlCharts/ruleChoice.ts";
import type { FalseSignals } from "../controlChartResult.ts";

/**
 * What the chosen rules cost on a quiet house, for the baseline of the latest phase; null where it has no limits. The
 * baseline of one variety is taken as the middle one in size, and all that share its spread count towards sigma.
 */
export function falseSignalsOf(choice: RuleChoice, phases: readonly ChartPhase[]): FalseSignals | null {
  const latest = phases.filter((phase) => phase.judged.length > 0).at(-1);
  if (latest === undefined) return null;
  const sizes = latest.groups
    .filter(({ limits }) => limits !== null)
    .map(({ indices }) => indices.length)
    .sort((a, b) => a - b);
  const middle = sizes[Math.floor(sizes.length / 2)] ?? 0;
  const pooled = latest.groups.some(({ spreadPooled }) => spreadPooled);
  const { known, low, high } = falseSignalRunLength(choice, {
    centreCount: middle,
    seriesCounts: pooled ? sizes.filter((size) => size > 1) : [middle],
  });
  const judged = phases.reduce((sum, phase) => sum + phase.judged.length, 0);
  const runs = known.distribution.mean;
  return {
    rules: choice.rules,
    knownLimits: runs,
    low,
    high,
    expected: { estimate: judged / runs, low: judged / high, high: judged / low },
  };
}
