import { allSteps } from "../../analysis/allSteps.ts";
import { searchFalseSignalRunLength } from "../../analysis/controlCharts/falseSignalRunLength.ts";
import { ruleChoice } from "../../analysis/controlCharts/ruleChoice.ts";
import type { ControlChart, FalseSignals, YieldMoistureResult } from "../controlChartResult.ts";

/**
 * What a chart's rules cost on a quiet house, for the baseline of the latest phase; null where it has no limits. The
 * baseline of one variety is taken as the middle one in size, and all that share its spread count towards sigma.
 */
function* searchFalseSignals({ phases, rules, runs }: ControlChart): Generator<void, FalseSignals | null> {
  const latest = phases.filter(({ centres }) => centres.length > 0).at(-1);
  if (latest === undefined) return null;
  const sizes = latest.centres.map(({ baselineRuns }) => baselineRuns).sort((a, b) => a - b);
  const middle = sizes[Math.floor(sizes.length / 2)] ?? 0;
  const { known, low, high } = yield* searchFalseSignalRunLength(ruleChoice(rules), {
    centreCount: middle,
    seriesCounts: latest.pooled ? sizes.filter((size) => size > 1) : [middle],
  });
  const judged = runs.filter(({ deviation }) => deviation !== null).length;
  const between = known.distribution.mean;
  return {
    rules,
    knownLimits: between,
    low,
    high,
    expected: { estimate: judged / between, low: judged / high, high: judged / low },
  };
}

/**
 * What the rules of each chart cost, in steps of some milliseconds, so that a worker can hear of a newer wish meanwhile.
 * Where all is known from before there is one step.
 */
export function* findFalseSignals({ charts }: YieldMoistureResult): Generator<void, readonly (FalseSignals | null)[]> {
  const found: (FalseSignals | null)[] = [];
  for (const chart of charts) found.push(yield* searchFalseSignals(chart));
  return found;
}

/** The result with what its rules cost, one a chart. */
export function withFalseSignals(
  result: YieldMoistureResult,
  found: readonly (FalseSignals | null)[],
): YieldMoistureResult {
  return { ...result, charts: result.charts.map((chart, i) => ({ ...chart, falseSignals: found[i] ?? null })) };
}

/** All steps of {@link findFalseSignals} at once. */
export const falseSignalsOf = (result: YieldMoistureResult): readonly (FalseSignals | null)[] =>
  allSteps(findFalseSignals(result));
