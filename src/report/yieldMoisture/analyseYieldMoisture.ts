import { ruleChoice } from "../../analysis/controlCharts/ruleChoice.ts";
import type { RuleName } from "../../analysis/controlCharts/signal.ts";
import type { NamedBaseline } from "../../tables/house.ts";
import type { ChartedMeasure, ControlChart, YieldMoistureResult } from "../controlChartResult.ts";
import type { EventRow } from "../eventRow.ts";
import { forTheSame } from "../forTheSame.ts";
import type { LoadRow } from "../loadRow.ts";
import type { RunRow } from "../runRow.ts";
import type { TargetRow } from "../targetRow.ts";
import { baselineChoice } from "./baselineChoice.ts";
import { capabilities } from "./capabilities.ts";
import { chartOf } from "./chartOf.ts";
import { measuredRuns } from "./measuredRuns.ts";
import { moistureCost } from "./moistureCost.ts";
import { varietyBalances } from "./varietyBalance.ts";

export interface YieldMoistureOptions {
  /** Moisture samples by run. */
  readonly samples: ReadonlyMap<string, readonly number[]>;
  readonly targets: readonly TargetRow[];
  readonly events: readonly EventRow[];
  readonly baselines: readonly NamedBaseline[];
  /** What raises a signal; null: the usual pair. */
  readonly rules: readonly RuleName[] | null;
  readonly without: ReadonlySet<string>;
  readonly timeZone: string;
}

const MEASURES: readonly ChartedMeasure[] = ["dry_yield_pct", "final_moisture_pct"];

/** What neither rules nor baselines change: who tries other rules asks of the same rows again. */
const groundOf = forTheSame(
  (
    runs: readonly RunRow[],
    loads: readonly LoadRow[],
    samples: YieldMoistureOptions["samples"],
    targets: YieldMoistureOptions["targets"],
  ) => {
    const measures = MEASURES.map((measure) => {
      const own = measuredRuns(runs, measure, samples);
      return { measure, runs: own, capability: capabilities(measure, own.measured, targets) };
    });
    const moisture = measures.find(({ measure }) => measure === "final_moisture_pct");
    return {
      measures,
      moistureCost: moisture ? moistureCost(moisture.runs.measured, targets, loads) : null,
      balance: varietyBalances(runs),
    };
  },
);

/**
 * Whether yield and final moisture are in control and meet the spec, over the runs shown; what the rules cost is still to
 * come (`falseSignalsOf` finds it), since it takes longer than all the rest.
 */
export function analyseYieldMoisture(
  runs: readonly RunRow[],
  loads: readonly LoadRow[],
  options: YieldMoistureOptions,
): YieldMoistureResult {
  const { samples, targets, events, rules } = options;
  const choice = rules === null ? ruleChoice() : ruleChoice(rules);
  const { measures, moistureCost: cost, balance } = groundOf(runs, loads, samples, targets);
  const charts = measures.map(({ measure, runs: own, capability }): ControlChart => {
    const baseline = baselineChoice(own.measured, options);
    return { ...chartOf({ measure, runs: own, choice, baseline, events }), capability };
  });
  return { charts, moistureCost: cost, balance };
}
