import { movingRangeVariance, spreadRatioQuantile } from "../../src/analysis/controlCharts/movingRangeSpread.ts";
import type { RuleChoice } from "../../src/analysis/controlCharts/ruleChoice.ts";
import { runLength } from "../../src/analysis/controlCharts/runLength.ts";
import { signalCountChances } from "../../src/analysis/controlCharts/runLengthDistribution.ts";
import { normalQuantile } from "../../src/analysis/distributions.ts";
import type { ControlChart } from "../../src/report/controlChartResult.ts";

const SIGMA_CELLS = 10;
const CENTRE_CELLS = 4;
const kept = new Map<string, number>();

/**
 * The count of false signals that a quiet chart with limits from a baseline stays at or under in 95 houses of 100: the
 * chances of each count, averaged over what baselines of that size make of sigma and centre (10 × 4 equally likely
 * pairs, as `falseSignalRunLength` draws them). The mean of varieties whose centres miss by different amounts is pulled
 * off less than here, where all miss by the same, so the point is on the generous side.
 *
 * @param baselines how many runs of each variety set the limits
 * @throws RangeError for no baseline of two runs or more
 */
export function quietSignalPoint95(choice: RuleChoice, baselines: readonly number[], runs: number): number {
  const sizes = [...baselines].sort((a, b) => a - b);
  const key = JSON.stringify([choice, sizes, runs]);
  const known = kept.get(key);
  if (known !== undefined) return known;
  const middle = sizes[Math.floor(sizes.length / 2)] ?? 0;
  const variance = movingRangeVariance(sizes.filter((size) => size > 1));
  const chances: number[] = [];
  for (let i = 0; i < SIGMA_CELLS; i++) {
    const ratio = spreadRatioQuantile((i + 0.5) / SIGMA_CELLS, variance);
    for (let j = 0; j < CENTRE_CELLS; j++) {
      const miss = normalQuantile(0.5 + (j + 0.5) / CENTRE_CELLS / 2) / Math.sqrt(middle);
      const { distribution } = runLength(choice, { shift: miss / ratio, spread: 1 / ratio });
      signalCountChances(distribution, runs).forEach((chance, count) => {
        chances[count] = (chances[count] ?? 0) + chance / SIGMA_CELLS / CENTRE_CELLS;
      });
    }
  }
  let sum = 0;
  const point = chances.findIndex((chance) => {
    sum += chance;
    return sum >= 0.95;
  });
  const result = point < 0 ? chances.length : point;
  kept.set(key, result);
  return result;
}

/** Runs at which a chart raised a signal, whichever of its rules did: a quiet chart's count starts anew after each. */
export function runsSignalled(chart: ControlChart): ReadonlySet<string> {
  return new Set(chart.signals.map(({ raisedAt }) => raisedAt));
}
