import type { ChartedMeasure, ChartPhase, ControlChart } from "../report/controlChartResult.ts";
import { printDate } from "../units/instant.ts";
import { exactPoints, measureName, pointsRange } from "./chartWords.ts";
import { counted, listed } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

/** Batches that a variety needs in its baseline before its spread is its own. */
const OWN_SPREAD = 20;

/** How far the limits lie from their centres, with what is known of it: one spread, or each variety's own. */
function reachParts({ centres, reach }: ChartPhase): Sentence {
  const centre = centres.length > 1 ? "each variety’s own centre" : "the centre";
  if (reach !== null) {
    const known = `(${pointsRange(reach.low, reach.high)} by what so many batches can tell)`;
    return [strong(exactPoints(reach.estimate)), ` either side of ${centre} ${known}`];
  }
  const reaches = centres.map((one) => one.reach);
  return [strong(pointsRange(Math.min(...reaches), Math.max(...reaches))), ` either side of ${centre}, by variety`];
}

/** What a phase's limits rest on, and how well so many batches can tell where they lie. */
export function phaseSentence(phase: ChartPhase, measure: ChartedMeasure): Sentence {
  const { name, baselineRuns, centres, provisional } = phase;
  const start = `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
  if (centres.length === 0) {
    return [`${start}: no limits yet, since ${counted(baselineRuns, "batch", "batches")} cannot carry them.`];
  }
  return [
    `${start}: the limits of ${measureName[measure]} rest on `,
    strong(counted(baselineRuns, "batch", "batches")),
    " and lie ",
    ...reachParts(phase),
    ".",
    provisional ? ` They are provisional${fewest(phase)}.` : "",
  ];
}

/** `: Brunolt has only 7 batches in the baseline`. */
function fewest({ centres }: ChartPhase): string {
  const few = [...centres].sort((a, b) => a.baselineRuns - b.baselineRuns)[0];
  if (few === undefined) return "";
  return `: ${centres.length > 1 ? few.variety : "the baseline"} has only ${counted(few.baselineRuns, "batch", "batches")}`;
}

/** Whether varieties share one spread, and why. Empty for one variety. */
export function spreadSentence({ centres, pooled }: ChartPhase): Sentence {
  if (centres.length < 2) return [];
  const few = centres.filter(({ baselineRuns }) => baselineRuns < OWN_SPREAD).map(({ variety }) => variety);
  if (!pooled)
    return [`Each variety has its own spread, since each has ${OWN_SPREAD} batches or more in the baseline.`];
  const why =
    few.length === 0
      ? ""
      : `: ${listed(few)} ${few.length === 1 ? "has" : "have"} fewer than ${OWN_SPREAD} batches in the baseline`;
  return [`The varieties share one spread, measured within each${why}.`];
}

/**
 * Whether new batches still move the limits of the latest phase: they do while a variety's baseline is not full.
 * Empty for a phase that is over.
 */
export function fillingSentence(chart: ControlChart, phase: number): Sentence {
  const latest = chart.phases[phase];
  if (latest === undefined || phase !== chart.phases.length - 1) return [];
  const filling = latest.centres.flatMap(({ variety, frozen }) => (frozen ? [] : [variety])).sort();
  if (filling.length === 0) return ["Later batches move no limit."];
  const own = filling.length === 1 ? "its limits" : "their limits";
  const whose = latest.pooled || latest.centres.length < 2 ? "the limits" : own;
  const names =
    latest.centres.length < 2 ? "The baseline is" : `${listed(filling)} ${filling.length === 1 ? "is" : "are"}`;
  return [
    `${names} still filling${latest.centres.length < 2 ? "" : " a baseline"}, so each new batch moves ${whose} a little.`,
  ];
}

/** One batch that stands on the chart but in no baseline, or several for the same reason. */
export interface LeftOut {
  readonly reason: string;
  readonly runs: readonly string[];
}

/** Batches that no baseline may use, by reason, in the order of the chart. */
export function leftOutOfBaseline(chart: ControlChart): readonly LeftOut[] {
  const byReason = new Map<string, string[]>();
  for (const { run, leftOut } of chart.runs) {
    if (leftOut === null) continue;
    byReason.set(leftOut, [...(byReason.get(leftOut) ?? []), run]);
  }
  return [...byReason].map(([reason, runs]) => ({ reason, runs }));
}

/**
 * Batches beyond the limits that helped to set them, in the latest phase. None is taken out by itself: whoever finds a
 * cause logs it.
 */
export function signalledInBaseline(chart: ControlChart): readonly string[] {
  const beyond = new Set(chart.signals.filter(({ rule }) => rule === "beyondLimits").flatMap(({ runs }) => runs));
  const latest = chart.phases.length - 1;
  return chart.runs
    .filter(({ run, inBaseline, phase }) => inBaseline && phase === latest && beyond.has(run))
    .map(({ run }) => run);
}

/** `12 Sep 2024 to 3 Oct 2026, 140 batches`. */
export function phaseSpan(phase: ChartPhase, timeZone: string): string {
  return `${printDate(phase.from, timeZone)} to ${printDate(phase.to, timeZone)}, ${counted(phase.runs, "batch", "batches")}`;
}
