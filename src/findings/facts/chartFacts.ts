import type { ControlChart } from "../../report/controlChartResult.ts";
import type { ChartFact, Fact, MonthlyLoss, WithinFact } from "../../report/fact.ts";
import { type SignalGroup, signalGroups } from "../signalGroups.ts";
import { chanceReal } from "./chanceReal.ts";
import { batchesAMonth, concerns, type FactFrame, namedRuns, noLoss } from "./factFrame.ts";

/** A batch in a hundred goes wrong by itself, by several times the usual spread; one month in ten the mean moves by about one. */
const SINGLE = { share: 0.01, sigmas: 5 };
const SHIFT = { share: 0.1, sigmas: 1 };

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** Share of a group's batches above the highest value their variety's spec accepts. */
function refusedShare({ capability }: ControlChart, { runs }: SignalGroup): number {
  const over = runs.filter(({ variety, value }) => {
    const high = capability.find((spec) => spec.variety === variety)?.high ?? null;
    return high !== null && value > high;
  });
  return over.length / Math.max(1, runs.length);
}

/** What a moved mean takes in a month: malt that was dried away or never made, and batches that are refused. */
function lossOf(frame: FactFrame, chart: ControlChart, group: SignalGroup, size: number): MonthlyLoss {
  const single = group.runs.length === 1;
  const batches = single ? 1 : batchesAMonth(frame);
  const maltOf = (pick: "maltKilograms" | "grainInKilograms"): number =>
    meanOf(frame.report.runs.flatMap((run) => run[pick] ?? []));
  if (chart.measure === "dry_yield_pct") {
    return { ...noLoss, kilogramsMalt: (Math.max(0, -size) / 100) * maltOf("grainInKilograms") * batches };
  }
  return {
    ...noLoss,
    kilogramsMalt: (Math.max(0, -size) / 100) * maltOf("maltKilograms") * batches,
    refusedBatches: refusedShare(chart, group) * batches,
  };
}

function groupFact(frame: FactFrame, chart: ControlChart, group: SignalGroup): ChartFact | null {
  const { runs, main, beside } = group;
  const [first, last] = [runs[0], runs.at(-1)];
  const single = runs.length === 1;
  if (first === undefined || last === undefined) return null;
  // One odd batch belongs to the month it came in; a moved mean to every month it lasts.
  const isHere = single ? last.at >= frame.from && last.at < frame.before : concerns(frame, first.at, last.at);
  const sigma = last.sigma ?? chart.phases[last.phase]?.sigma?.estimate ?? null;
  if (!isHere || sigma === null) return null;
  const off = single ? main.size : meanOf(runs.flatMap(({ deviation }) => deviation ?? []));
  const reach = (1.96 * sigma) / Math.sqrt(runs.length);
  const varieties = new Set(runs.map(({ variety }) => variety));
  const { share, sigmas } = single ? SINGLE : SHIFT;
  return {
    kind: "chart",
    measure: chart.measure,
    variety: varieties.size === 1 && !single ? first.variety : null,
    size: off,
    single,
    from: first.at,
    to: last.at,
    runs: namedRuns(runs.map(({ run }) => run)),
    runCount: runs.length,
    chanceReal: chanceReal({ estimate: off, low: off - reach, high: off + reach }, { share, size: sigmas * sigma }),
    loss: lossOf(frame, chart, group, off),
    beside,
  };
}

/** The spread within batches: the latest that lie above its limit. */
function withinFact(frame: FactFrame, chart: ControlChart): WithinFact | null {
  const { within } = chart;
  if (within === null) return null;
  const uneven = new Set(within.unevenRuns);
  const here = chart.runs.filter(({ run, at }) => uneven.has(run) && at >= frame.from && at < frame.before);
  const [first, last] = [here[0], here.at(-1)];
  if (first === undefined || last === undefined) return null;
  const spreadOf = new Map(within.points.map((point, i) => [chart.runs[i]?.run, point.standardDeviation ?? 0]));
  return {
    kind: "uneven batch",
    spreadPoints: Math.max(...here.map(({ run }) => spreadOf.get(run) ?? 0)),
    usualPoints: within.sigma,
    from: first.at,
    to: last.at,
    runs: namedRuns(here.map(({ run }) => run)),
    runCount: here.length,
    // An S chart at three sigma signals by chance in about one batch of two hundred (its upper side alone).
    chanceReal: 1 - Math.min(0.5, 0.005 * frame.monthRuns.length) / here.length,
    loss: noLoss,
    beside: [],
  };
}

/** Signals of the control charts that speak of the month's batches, and batches that are uneven in themselves. */
export function chartFacts(frame: FactFrame): readonly Fact[] {
  return frame.report.yieldMoisture.charts.flatMap((chart): Fact[] => {
    const found: (Fact | null)[] = [
      ...signalGroups(chart).map((group) => groupFact(frame, chart, group)),
      withinFact(frame, chart),
    ];
    return found.filter((fact) => fact !== null);
  });
}
