import type { ControlChart } from "../../report/controlChartResult.ts";
import type { ChartFact, Fact, MonthlyLoss, WithinFact } from "../../report/fact.ts";
import { type SignalGroup, signalGroups } from "../signalGroups.ts";
import { chanceReal } from "./chanceReal.ts";
import { wanderedBy } from "./effectMean.ts";
import { batchesAMonth, concerns, type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";

/** A batch in a hundred goes wrong by itself, by several times the usual spread; one month in ten the mean moves by about one. */
const SINGLE = { share: 0.01, sigmas: 5 };
const SHIFT = { share: 0.1, sigmas: 1 };

/**
 * What a moved mean must come to before anybody would go looking: a point of dry matter, and a third of what is usually accepted
 * either side of a moisture (common practice). Grain lots and seasons move a house by less, and its charts see that too.
 */
const LEAST_SHIFT = { dry_yield_pct: 1, final_moisture_pct: 0.22 } as const;

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** Share of a group's batches above the highest value their variety's spec accepts. */
function refusedShare({ capability }: ControlChart, runs: SignalGroup["runs"]): number {
  const over = runs.filter(({ variety, value }) => {
    const high = capability.find((spec) => spec.variety === variety)?.high ?? null;
    return high !== null && value > high;
  });
  return over.length / Math.max(1, runs.length);
}

/** What a moved mean takes in a month: malt that was dried away or never made, and batches that are refused. */
function lossOf(frame: FactFrame, chart: ControlChart, of: SignalGroup["runs"], size: number): MonthlyLoss {
  const single = of.length === 1;
  const batches = single ? 1 : batchesAMonth(frame);
  const maltOf = (pick: "maltKilograms" | "grainInKilograms"): number =>
    meanOf(frame.report.runs.flatMap((run) => run[pick] ?? []));
  if (chart.measure === "dry_yield_pct") {
    return { ...noLoss, kilogramsMalt: (Math.max(0, -size) / 100) * maltOf("grainInKilograms") * batches };
  }
  return {
    ...noLoss,
    kilogramsMalt: (Math.max(0, -size) / 100) * maltOf("maltKilograms") * batches,
    refusedBatches: refusedShare(chart, of) * batches,
  };
}

/** What the rules looked at: where neighbours resemble each other only what each batch says beyond the one before it. */
const deviationOf = (runs: SignalGroup["runs"]): number => meanOf(runs.flatMap(({ deviation }) => deviation ?? []));

/** How far off the values themselves lie: of a lasting shift the above shows but a part where neighbours resemble each other. */
const levelOf = (runs: SignalGroup["runs"]): number =>
  meanOf(runs.flatMap(({ value, centre }) => (centre === null ? [] : [value - centre])));

/** So many standard errors further off than the batches before them, and the latest batches stand on a level of their own. */
const ON_TOP = 2;

/**
 * The batches that a signal speaks of: its latest alone where they have moved on from a lesser shift before them, which a chart
 * does not end and begin anew.
 */
function standingNow({ runs }: SignalGroup, sigma: number): SignalGroup["runs"] {
  const [before, latest] = [runs.slice(0, -LATEST_RUNS), runs.slice(-LATEST_RUNS)];
  if (before.length === 0) return runs;
  const further = deviationOf(latest) - deviationOf(before);
  const error = sigma * Math.sqrt(1 / latest.length + 1 / before.length);
  return further * Math.sign(deviationOf(runs)) > ON_TOP * error ? latest : runs;
}

function groupFact(frame: FactFrame, chart: ControlChart, group: SignalGroup): ChartFact | null {
  const { main, beside } = group;
  const last = group.runs.at(-1);
  const sigma = last?.sigma ?? chart.phases[last?.phase ?? 0]?.sigma?.estimate ?? null;
  if (last === undefined || sigma === null) return null;
  const runs = standingNow(group, sigma);
  const single = runs.length === 1;
  const [first] = runs;
  if (first === undefined) return null;
  // One odd batch belongs to the month it came in; a moved mean to every month it lasts.
  const isHere = single ? last.at >= frame.from && last.at < frame.before : concerns(frame, first.at, last.at);
  if (!isHere) return null;
  const off = single ? main.size : levelOf(runs);
  if (!single && Math.abs(off) < LEAST_SHIFT[chart.measure]) return null;
  const evidence = single ? main.size : deviationOf(runs);
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
    chanceReal: chanceReal(
      { estimate: evidence, low: evidence - reach, high: evidence + reach },
      { share, size: sigmas * sigma },
    ),
    loss: lossOf(frame, chart, runs, off),
    beside,
  };
}

/**
 * The latest batches' level against all before, by how such levels usually wander: a chart of what each batch says beyond the one
 * before it is slow for a shift that lasts.
 */
function levelFact(frame: FactFrame, chart: ControlChart): ChartFact | null {
  const known = chart.runs.filter(({ centre, at }) => centre !== null && at < frame.before);
  const inMonth = known.filter(({ at }) => at >= frame.from).length;
  const latest = known.slice(-Math.max(LATEST_RUNS, inMonth));
  const [first, last] = [latest[0], latest.at(-1)];
  const sigma = last?.sigma ?? null;
  if (inMonth === 0 || first === undefined || last === undefined || sigma === null) return null;
  const levels = (runs: typeof known): readonly number[] => runs.map(({ value, centre }) => value - (centre ?? 0));
  const moved = wanderedBy(levels(known.slice(0, known.length - latest.length)), levels(latest));
  if (moved === null || Math.abs(moved.estimate) < LEAST_SHIFT[chart.measure]) return null;
  return {
    kind: "chart",
    measure: chart.measure,
    variety: null,
    size: moved.estimate,
    single: false,
    from: first.at,
    to: last.at,
    runs: namedRuns(latest.map(({ run }) => run)),
    runCount: latest.length,
    chanceReal: chanceReal(moved, { share: SHIFT.share, size: SHIFT.sigmas * sigma }),
    loss: lossOf(frame, chart, latest, moved.estimate),
    beside: [],
  };
}

/** Of signals and level the surer where they say the same. */
function shiftFacts(frame: FactFrame, chart: ControlChart): readonly ChartFact[] {
  const signalled = signalGroups(chart).flatMap((group) => groupFact(frame, chart, group) ?? []);
  const level = levelFact(frame, chart);
  if (level === null) return signalled;
  const isSame = (fact: ChartFact): boolean => !fact.single && Math.sign(fact.size) === Math.sign(level.size);
  if (signalled.some((fact) => isSame(fact) && fact.chanceReal >= level.chanceReal)) return signalled;
  return [...signalled.filter((fact) => !isSame(fact)), level];
}

/** The spread within batches: the latest that lie above its limit. */
function withinFact(frame: FactFrame, chart: ControlChart): WithinFact | null {
  const { within } = chart;
  if (within === null) return null;
  const uneven = new Set(within.unevenRuns);
  const here = chart.runs.filter(({ run, at }) => uneven.has(run) && at >= frame.from && at < frame.before);
  const [first, last] = [here[0], here.at(-1)];
  if (first === undefined || last === undefined) return null;
  const pointOf = new Map(within.points.map((point, i) => [chart.runs[i]?.run, point]));
  return {
    kind: "uneven batch",
    spreadPoints: Math.max(...here.map(({ run }) => pointOf.get(run)?.standardDeviation ?? 0)),
    usualPoints: within.sigma,
    from: first.at,
    to: last.at,
    runs: namedRuns(here.map(({ run }) => run)),
    runCount: here.length,
    chanceReal: chanceUneven(here.map(({ run }) => pointOf.get(run)?.chance ?? 1)),
    loss: noLoss,
    beside: [],
  };
}

/** One batch in two hundred is truly uneven, and of those every other shows so much. */
const UNEVEN = { share: 0.005, power: 0.5 };

/**
 * Batches that are uneven together speak for each other.
 *
 * @param chances how seldom a batch as even as the usual shows each of the spreads
 */
function chanceUneven(chances: readonly number[]): number {
  const { share, power } = UNEVEN;
  const byChance = chances.reduce((product, chance) => product * Math.min(1, chance / power), 1);
  return share / (share + (1 - share) * byChance);
}

/** Signals of the control charts that speak of the month's batches, and batches that are uneven in themselves. */
export function chartFacts(frame: FactFrame): readonly Fact[] {
  return frame.report.yieldMoisture.charts.flatMap((chart): Fact[] => {
    const within = withinFact(frame, chart);
    return [...shiftFacts(frame, chart), ...(within === null ? [] : [within])];
  });
}
