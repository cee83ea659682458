import { ruleChoice } from "../../src/analysis/controlCharts/ruleChoice.ts";
import { runLength } from "../../src/analysis/controlCharts/runLength.ts";
import { runLengthQuantile } from "../../src/analysis/controlCharts/runLengthDistribution.ts";
import { mean } from "../../src/analysis/summary.ts";
import type { ChartedMeasure, ControlChart, YieldMoistureResult } from "../../src/report/controlChartResult.ts";
import { type ChartDesk, type ChartInput, chartsOf } from "./chartDesk.ts";
import { quietSignalPoint95, runsSignalled } from "./quietSignals.ts";
import { simulateHouse } from "./simulateHouse.ts";
import { type TrueBatch, trueBatches } from "./trueBatches.ts";
import type { LoadFault } from "./truths.ts";

/** Whether a chart saw a fault, and by when it should have. */
export interface FaultSeen {
  /** What the fault truly does: its batches less the same batches without it, mean, in the measure's points. */
  readonly shift: number;
  /** The same in the chart's own sigma. */
  readonly size: number;
  /** By so many batches a shift of that size is signalled in 95 charts of 100, were the limits known exactly. */
  readonly point95: number;
  /** Batches on the chart while the fault lasted. */
  readonly batches: number;
  /** The how manieth of them first raised a signal to the side of the shift; null: none did while the fault lasted. */
  readonly seenAfter: number | null;
  readonly seenInTime: boolean;
  /** How far the same batches would lie from their centres without the fault, mean, in sigma: the chart's head start. */
  readonly headStart: number;
  /** As `seenInTime`, for shift and head start together: where the batches truly stand to the chart's centre. */
  readonly seenInTimeFromCentre: boolean;
}

/** Signals in a stretch in which nothing is wrong. */
export interface QuietStretch {
  readonly batches: number;
  readonly signals: number;
  readonly point95: number;
}

/** What the charts of one simulated house make of what was put into it. Null: the house has no such batch. */
export interface ChartTruths {
  readonly seed: number;
  readonly scale: FaultSeen | null;
  readonly belt: FaultSeen | null;
  /** The belt again where the poor lot's batches are left off the chart, which they make wide and restless. */
  readonly beltWithoutPoorLot: FaultSeen | null;
  /** The belt where settings name no baseline: the first 24 batches of each variety then reach into its weeks. */
  readonly beltWithoutNamedBaseline: FaultSeen | null;
  /** Yield, moisture: from the first batch to the last before any fault. */
  readonly beforeAnyFault: readonly QuietStretch[];
}

const MEASURES: Readonly<Record<ChartedMeasure, (batch: TrueBatch) => number>> = {
  dry_yield_pct: (batch) => batch.dryMatterYieldPercent,
  final_moisture_pct: (batch) => batch.finalMoisturePercent,
};

type Batches = ReadonlyMap<string, TrueBatch>;

function chartFor(result: YieldMoistureResult, measure: ChartedMeasure): ControlChart {
  const chart = result.charts.find((candidate) => candidate.measure === measure);
  if (!chart) throw new RangeError(`there is no chart of ${measure}`);
  return chart;
}

const point95Of = ({ rules }: ControlChart, shift: number): number =>
  runLengthQuantile(runLength(ruleChoice(rules), { shift, spread: 1 }).distribution, 0.95);

/** The known truth of a fault of some batches beside what a chart of the house made of it. */
export function faultSeen(chart: ControlChart, fault: LoadFault, faulty: Batches, mended: Batches): FaultSeen | null {
  const value = MEASURES[chart.measure];
  const order = chart.runs.map(({ run }) => run);
  const places = order.flatMap((run, i) => (faulty.get(run)?.faults.has(fault) ? [i] : []));
  const judged = places.flatMap((place) => {
    const run = chart.runs[place];
    const faultyBatch = faulty.get(run?.run ?? "");
    const soundBatch = mended.get(run?.run ?? "");
    const centre = chart.phases[run?.phase ?? -1]?.centres.find(({ variety }) => variety === run?.variety);
    return faultyBatch && soundBatch && run && centre
      ? [{ run, centre, shift: value(faultyBatch) - value(soundBatch) }]
      : [];
  });
  const [first, last] = [places[0], places.at(-1)];
  if (first === undefined || last === undefined || judged.length === 0) return null;
  const shift = mean(judged.map((j) => j.shift));
  const sigma = mean(judged.map(({ centre }) => centre.sigma.estimate));
  const size = shift / sigma;
  const headStart = mean(
    judged.map(({ run, centre, shift: own }) => (run.value - own - centre.centre.estimate) / centre.sigma.estimate),
  );
  const point95 = point95Of(chart, size);
  const side = shift > 0 ? "above" : "below";
  const raised = chart.signals
    .filter(({ direction }) => direction === side)
    .map(({ raisedAt }) => order.indexOf(raisedAt))
    .filter((place) => place >= first && place <= last);
  const seenAfter = raised.length === 0 ? null : Math.min(...raised) - first + 1;
  return {
    shift,
    size,
    point95,
    batches: last - first + 1,
    seenAfter,
    seenInTime: seenAfter !== null && seenAfter <= point95,
    headStart,
    seenInTimeFromCentre: seenAfter !== null && seenAfter <= point95Of(chart, size + headStart),
  };
}

/** Signals raised before the first faulty batch came off the kiln, beside what is expected there of limits from a baseline. */
export function quietStretch(chart: ControlChart, batches: Batches): QuietStretch {
  const end = chart.runs.findIndex(({ run }) => (batches.get(run)?.faults.size ?? 0) > 0 || batches.get(run)?.poorLot);
  const stretch = chart.runs.slice(0, end < 0 ? chart.runs.length : end);
  const raised = runsSignalled(chart);
  const sizes = (chart.phases[0]?.centres ?? []).map(({ baselineRuns }) => baselineRuns);
  return {
    batches: stretch.length,
    signals: stretch.filter(({ run }) => raised.has(run)).length,
    point95: quietSignalPoint95(ruleChoice(chart.rules), sizes, stretch.length),
  };
}

/** Makes up the house of a seed, charts its logs as the page does, and holds the charts against its known truths. */
export async function chartTruths(desk: ChartDesk, seed: number): Promise<ChartTruths> {
  const house = simulateHouse({ seed });
  const input: ChartInput = await desk.read(house);
  const faulty = trueBatches(house);
  const mended = trueBatches(simulateHouse({ seed, mended: ["slipping belt", "mis-set scale"] }));
  const poorLot = new Set([...faulty.values()].filter((batch) => batch.poorLot).map(({ run }) => run));
  const usual = chartsOf(input);
  const belt = (result: YieldMoistureResult): FaultSeen | null =>
    faultSeen(chartFor(result, "final_moisture_pct"), "slipping belt", faulty, mended);
  return {
    seed,
    scale: faultSeen(chartFor(usual, "dry_yield_pct"), "mis-set scale", faulty, mended),
    belt: belt(usual),
    beltWithoutPoorLot: belt(chartsOf(input, { out: poorLot })),
    beltWithoutNamedBaseline: belt(chartsOf(input, { baselines: [] })),
    beforeAnyFault: usual.charts.map((chart) => quietStretch(chart, faulty)),
  };
}
