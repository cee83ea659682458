import type { RuleName } from "../../src/analysis/controlCharts/signal.ts";
import type { Interval } from "../../src/analysis/regressionFit.ts";
import type {
  Capability,
  ChartedRun,
  ChartPhase,
  ChartSignal,
  ControlChart,
  MoistureCost,
  VarietyBalance,
} from "../../src/report/controlChartResult.ts";

const DAY = 86_400_000;
const FIRST = Date.UTC(2024, 2, 25);

export const interval = (estimate: number, low: number, high: number): Interval => ({ estimate, low, high });

/** The moment at which run number `index` was unloaded: one every five days from 25 March 2024. */
export const unloadedAt = (index: number): number => FIRST + index * 5 * DAY;
export const runName = (index: number): string => `24-${String(index + 1).padStart(3, "0")}`;

export const madeUpPhase = (changes: Partial<ChartPhase> = {}): ChartPhase => ({
  name: "since the first batch",
  from: unloadedAt(0),
  to: unloadedAt(39),
  runs: 40,
  baselineRuns: 24,
  provisional: false,
  sigma: interval(0.5, 0.4, 0.7),
  pooled: false,
  centres: [
    {
      variety: "Amber",
      centre: interval(91, 90.8, 91.2),
      sigma: interval(0.5, 0.4, 0.7),
      reach: 1.5,
      baselineRuns: 24,
      frozen: true,
    },
  ],
  reach: interval(1.5, 1.2, 2.1),
  ...changes,
});

/** A chart of as many runs as there are values, all of one variety and one phase, centre 91 and spread 0.5, and no signal. */
export function madeUpChart(values: readonly number[], changes: Partial<ControlChart> = {}): ControlChart {
  const runs = values.map(
    (value, index): ChartedRun => ({
      run: runName(index),
      variety: "Amber",
      lot: "L1",
      kiln: "K1",
      load: `F${index}`,
      at: unloadedAt(index),
      value,
      samples: 1,
      phase: 0,
      inBaseline: index < 24,
      leftOut: null,
      centre: 91,
      deviation: value - 91,
      sigma: 0.5,
    }),
  );
  return {
    measure: "dry_yield_pct",
    runs,
    lacking: [],
    phases: [madeUpPhase({ to: unloadedAt(values.length - 1), runs: values.length })],
    rules: ["beyondLimits", "weightedMean"],
    signals: [],
    falseSignals: null,
    weightedMean: null,
    cumulativeSums: null,
    movingRanges: null,
    within: null,
    assumptions: null,
    capability: [],
    tooLittle: null,
    ...changes,
  };
}

/** A signal of `rule` over the runs `from` to `to` (indices, inclusive), raised at the last unless said otherwise. */
export function madeUpSignal(
  rule: RuleName,
  from: number,
  to: number,
  size: number,
  changes: Partial<ChartSignal> = {},
): ChartSignal {
  return {
    rule,
    direction: size > 0 ? "above" : "below",
    size,
    runs: Array.from({ length: to - from + 1 }, (_, i) => runName(from + i)),
    raisedAt: runName(to),
    from: unloadedAt(from),
    to: unloadedAt(to),
    beside: [],
    ...changes,
  };
}

export const madeUpCapability = (changes: Partial<Capability> = {}): Capability => ({
  variety: "Amber",
  runs: 40,
  low: 3.6,
  target: 4.4,
  high: 5,
  cpk: interval(0.83, 0.62, 1.04),
  expectedOutsidePercent: interval(1.2, 0.3, 4.1),
  seenOutside: 2,
  seenOutsidePercent: interval(5, 1.4, 16.5),
  ...changes,
});

export const madeUpCost = (changes: Partial<MoistureCost> = {}): MoistureCost => ({
  batches: 180,
  years: 2.5,
  targetPercent: 4.4,
  driedAwayKilogramsPerYear: 100,
  refusedBatches: 6,
  refusedKilogramsPerYear: 800,
  energyKilowattHoursPerYear: 90,
  ...changes,
});

export const madeUpBalance = (changes: Partial<VarietyBalance> = {}): VarietyBalance => ({
  variety: "Amber",
  batches: 40,
  asIsYieldPercent: 83.5,
  dryMatterYieldPercent: 91,
  lossPercent: 9,
  rootletsPercent: 3.5,
  steepAndRespirationPercent: 5.5,
  negative: 0,
  basis: "cleaned",
  ...changes,
});
